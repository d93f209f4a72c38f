import type { AreaGeometry, Exclusion, Position, Property, Zone } from '../../../core/book/index.ts';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { type Corner, ringAt } from '../geometry/shapes.ts';

/** Invented lawns for tests, drawn in feet round a place. */

export const HOME: Position = [-83, 40];

export const feet = (corners: readonly Corner[]): Corner[] =>
  corners.map(([east, north]) => [east * METRES_PER_FOOT, north * METRES_PER_FOOT]);

export function polygonFt(...rings: readonly (readonly Corner[])[]): AreaGeometry {
  return { type: 'Polygon', coordinates: rings.map((ring) => ringAt(HOME, feet(ring))) };
}

export function zone(id: string, geometry: AreaGeometry, more: Partial<Zone> = {}): Zone {
  return { id, name: id, shape: { kind: 'drawn', geometry }, slopeDeg: 0, gateIds: [], ...more };
}

export function stated(id: string, areaSqFt: number, more: Partial<Zone> = {}): Zone {
  return { id, name: id, shape: { kind: 'stated', areaSqFt, method: 'old card' }, slopeDeg: 0, gateIds: [], ...more };
}

export function exclusion(id: string, geometry: AreaGeometry, more: Partial<Exclusion> = {}): Exclusion {
  return { id, name: id, what: 'bed', geometry, keepAwayFt: 0, ...more };
}

export function property(
  zones: readonly Zone[],
  exclusions: readonly Exclusion[] = [],
  more: Partial<Property> = {},
): Property {
  return {
    id: 'p1',
    name: 'Invented lawn',
    address: '',
    parking: HOME,
    noTrailer: false,
    gates: [],
    zones,
    exclusions,
    cautions: [],
    note: '',
    ...more,
  };
}
