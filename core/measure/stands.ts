import type { Property, Zone } from '../book/index.ts';
import { STEPS_PER_METRE, withoutHairs } from '../geometry/index.ts';
import { type Feet, metresToFeet, quantity } from '../units/index.ts';
import { type PreparedZone, prepareProperty } from './prepare.ts';

/** A zone of the property on which a machine could stand, and the least way from there to the farthest corner of another zone. */
export type Stand = { readonly zone: Zone; readonly farthestFt: Feet };

type Corner = readonly [x: number, y: number];

/**
 * Where a machine could stand to serve a zone with its hose: at that corner of each drawn zone, the zone itself among them, from which
 * the straight line to the farthest corner of what is treated is shortest. Whether the machine gets there is not asked. Nothing
 * where the hose was paced on site, since a straight line says less, and where the zone has no outline.
 */
export function standsFor(property: Property, zone: Zone): readonly Stand[] {
  if (zone.hosePathFt !== undefined) return [];
  const { zones } = prepareProperty(property);
  const served = cornersOf(zones.find((each) => each.zone.id === zone.id));
  if (served.length === 0) return [];
  return zones.flatMap((each) => {
    const corners = cornersOf(each);
    if (corners.length === 0) return [];
    const steps = Math.min(...corners.map((from) => farthestFrom(from, served)));
    return [{ zone: each.zone, farthestFt: metresToFeet(quantity<'m'>(steps / STEPS_PER_METRE)) }];
  });
}

function cornersOf(zone: PreparedZone | undefined): readonly Corner[] {
  if (zone?.kind !== 'drawn') return [];
  return withoutHairs(zone.cut.treatable).paths.flatMap((path) => path.map(({ x, y }): Corner => [x, y]));
}

function farthestFrom([x, y]: Corner, corners: readonly Corner[]): number {
  return corners.reduce((most, [toX, toY]) => Math.max(most, Math.hypot(toX - x, toY - y)), 0);
}
