import geodesic from 'geographiclib-geodesic';
import { createRandom, type Random } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import { regionOf } from '../../../core/geometry/region.ts';

/** Shapes that several tests draw. Places are put down by GeographicLib, so they owe nothing to the code under test. */

export type Corner = readonly [east: number, north: number];

/** A corner so many metres east and north of a place, along the geodesic. */
export function placeAt(centre: Position, [east, north]: Corner): Position {
  const bearing = (Math.atan2(east, north) * 180) / Math.PI;
  const end = geodesic.Geodesic.WGS84.Direct(centre[1], centre[0], bearing, Math.hypot(east, north));
  return [end.lon2 ?? Number.NaN, end.lat2 ?? Number.NaN];
}

/** A closed ring of corners given in metres round a place. */
export function ringAt(centre: Position, corners: readonly Corner[]): Position[] {
  const ring = corners.map((corner) => placeAt(centre, corner));
  return ring[0] === undefined ? [] : [...ring, ring[0]];
}

/** Area inside a ring by C. F. F. Karney's polygon area on the ellipsoid, m2: the oracle. */
export function karneyArea(ring: readonly Position[]): number {
  const polygon = geodesic.Geodesic.WGS84.Polygon(false);
  for (const [longitude, latitude] of ring.slice(0, -1)) polygon.AddPoint(latitude, longitude);
  return Math.abs(polygon.Compute(false, true).area ?? Number.NaN);
}

/** Corners of an uneven outline round the origin that does not cross itself, metres. */
export function starCorners(random: Random, count: number, radius: number): Corner[] {
  return Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * (index + 0.8 * random.unit())) / count;
    const distance = radius * (0.4 + 0.6 * random.unit());
    return [distance * Math.cos(angle), distance * Math.sin(angle)];
  });
}

export const rectangle = (west: number, south: number, east: number, north: number): Corner[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

/** A path of whole grid steps. */
export const path = (...corners: readonly Corner[]) => corners.map(([x, y]) => ({ x, y }));

/** A region of one anticlockwise square, corners in grid steps. */
export const squareRegion = (west: number, south: number, size: number) =>
  regionOf([path(...rectangle(west, south, west + size, south + size))]);

export const random = createRandom;
