import type { Property, Zone } from '../book/index.ts';
import { STEPS_PER_METRE, withoutHairs } from '../geometry/index.ts';
import { type Feet, metresToFeet, quantity } from '../units/index.ts';
import { prepareProperty } from './prepare.ts';

/**
 * Hose needed from where it can stand to the farthest corner of a zone, ft: as paced on site where that is written down,
 * else the straight line from the stand (or the parking point) to the farthest corner of what is treated, which is the least
 * it can be. A stated area without a paced length has no corner: it is taken as a square that begins at the stand, and so
 * as the square's diagonal. Infinity where the zone cannot be measured.
 */
export function farthestFt(property: Property, zone: Zone): Feet {
  if (zone.hosePathFt !== undefined) return quantity<'ft'>(zone.hosePathFt);
  const { plane, zones } = prepareProperty(property);
  const prepared = zones.find((each) => each.zone.id === zone.id);
  if (prepared?.kind === 'stated') return quantity<'ft'>(Math.sqrt(2 * prepared.areaSqFt));
  if (prepared?.kind !== 'drawn') return quantity<'ft'>(Number.POSITIVE_INFINITY);
  const stand = plane.toPlane(zone.hoseStand ?? property.parking);
  let farthest = 0;
  for (const path of withoutHairs(prepared.cut.treatable).paths) {
    for (const { x, y } of path) {
      farthest = Math.max(farthest, Math.hypot(x / STEPS_PER_METRE - stand.x, y / STEPS_PER_METRE - stand.y));
    }
  }
  return metresToFeet(quantity<'m'>(farthest));
}
