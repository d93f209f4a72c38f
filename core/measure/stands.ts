import type { Property, Zone } from '../book/index.ts';
import { type Feet, metresToFeet, quantity } from '../units/index.ts';
import { cornersOf, farthestWay, hoseObstacles, pointsOf } from './hose-ways.ts';
import { prepareProperty } from './prepare.ts';

/** A zone of the property on which a machine could stand, and the least way from there to the farthest corner of another zone. */
export type Stand = { readonly zone: Zone; readonly farthestFt: Feet };

/**
 * Where a machine could stand to serve a zone with its hose: at that corner of each drawn zone, the zone itself among them, from which
 * the way round buildings to the farthest point of what is treated is shortest. Whether the machine gets there is not asked. Nothing
 * where the hose was paced on site, since that says more, and where the zone has no outline.
 */
export function standsFor(property: Property, zone: Zone): readonly Stand[] {
  if (zone.hosePathFt !== undefined) return [];
  const ground = prepareProperty(property);
  const served = pointsOf(ground.zones.find((each) => each.zone.id === zone.id));
  if (served.length === 0) return [];
  const obstacles = hoseObstacles(ground);
  return ground.zones.flatMap((each) => {
    const corners = cornersOf(each);
    if (corners.length === 0) return [];
    const metres = Math.min(...corners.map((from) => farthestWay(from, served, obstacles)));
    return [{ zone: each.zone, farthestFt: metresToFeet(quantity<'m'>(metres)) }];
  });
}
