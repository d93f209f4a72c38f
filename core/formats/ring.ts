import type { Position } from 'geojson';

/** A ring that ends where it begins; null where it has fewer than three corners. */
export type ClosedRing = { readonly ring: Position[]; readonly wasOpen: boolean };

/** Closes a ring of positions in two dimensions (RFC 7946, section 3.1.6: four positions or more, first and last the same). */
export function closeRing(positions: readonly Position[]): ClosedRing | null {
  const [first] = positions;
  const last = positions.at(-1);
  if (first === undefined || last === undefined) return null;
  const wasOpen = first[0] !== last[0] || first[1] !== last[1];
  const ring = wasOpen ? [...positions, first] : [...positions];
  return ring.length < 4 ? null : { ring, wasOpen };
}

/** True for longitude and latitude in degrees. Where on earth is not asked. */
export function isDegrees(longitude: number, latitude: number): boolean {
  return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90;
}
