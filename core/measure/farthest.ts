import type { Property, Zone } from '../book/index.ts';
import { type Feet, metresToFeet, quantity } from '../units/index.ts';
import { farthestWay, hoseObstacles, pointsOf } from './hose-ways.ts';
import { prepareProperty } from './prepare.ts';

/**
 * Hose needed from where it can stand to the farthest corner of a zone, ft: as paced on site where that is written down,
 * else the shortest way round the buildings of the property from the stand (or the parking point) to the farthest point of what is
 * treated. A stated area without a paced length has no corner: it is taken as a square that begins at the stand, and so
 * as the square's diagonal. Infinity where the zone cannot be measured.
 */
export function farthestFt(property: Property, zone: Zone): Feet {
  if (zone.hosePathFt !== undefined) return quantity<'ft'>(zone.hosePathFt);
  const ground = prepareProperty(property);
  const prepared = ground.zones.find((each) => each.zone.id === zone.id);
  if (prepared?.kind === 'stated') return quantity<'ft'>(Math.sqrt(2 * prepared.areaSqFt));
  if (prepared?.kind !== 'drawn') return quantity<'ft'>(Number.POSITIVE_INFINITY);
  const stand = ground.plane.toPlane(zone.hoseStand ?? property.parking);
  return metresToFeet(quantity<'m'>(farthestWay(stand, pointsOf(prepared), hoseObstacles(ground))));
}
