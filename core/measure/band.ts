import type { Property, Zone } from '../book/index.ts';
import { grow, intersection, regionArea, union } from '../geometry/index.ts';
import { feetToMetres, quantity, type SquareFeet, squareMetresToSquareFeet } from '../units/index.ts';
import { prepareProperty } from './prepare.ts';
import { groundArea } from './slope.ts';

/** What a band runs along. */
export type BandEdge = 'paving' | 'bed';

/**
 * Ground of the strip of treatable turf within `widthFt` of paving, beds or both, ft2. Measured from the drawn exclusions of
 * those kinds (from the edge of the keep-away strip, where there is one), with no ground counted twice; where none of them
 * lies at the zone, and for stated areas, from the edge lengths written down for the zone. Never more than the zone's area.
 */
export function bandAreaSqFt(property: Property, zone: Zone, widthFt: number, along: readonly BandEdge[]): SquareFeet {
  const { zones, exclusions } = prepareProperty(property);
  const prepared = zones.find((each) => each.zone.id === zone.id);
  if (prepared === undefined || prepared.kind === 'refused') return quantity<'ft2'>(0);
  if (prepared.kind === 'stated') return edgeStrip(zone, widthFt, along, prepared.areaSqFt);
  const edges = exclusions.filter((each) => along.some((kind) => kind === each.exclusion.what));
  const strips = edges.flatMap(({ plain, exclusion }) =>
    plain === null ? [] : [grow(plain, feetToMetres(quantity<'ft'>(exclusion.keepAwayFt + widthFt)))],
  );
  const strip = regionArea(intersection(prepared.cut.treatable, union(strips)));
  if (strip > 0) return groundArea(squareMetresToSquareFeet(quantity<'m2'>(strip)), zone.slopeDeg);
  const plan = squareMetresToSquareFeet(quantity<'m2'>(prepared.cut.treatableSqM));
  return edgeStrip(zone, widthFt, along, groundArea(plan, zone.slopeDeg));
}

function edgeStrip(zone: Zone, widthFt: number, along: readonly BandEdge[], mostSqFt: number): SquareFeet {
  const paving = along.includes('paving') ? (zone.pavementEdgeFt ?? 0) : 0;
  const bed = along.includes('bed') ? (zone.bedEdgeFt ?? 0) : 0;
  return quantity<'ft2'>(Math.min(mostSqFt, (paving + bed) * widthFt));
}
