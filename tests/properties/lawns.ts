import fc from 'fast-check';
import { createRandom } from '../../core/base/index.ts';
import type { AreaGeometry, Position } from '../../core/book/index.ts';
import { outlineArea, polygonsOf } from '../../core/geometry/index.ts';
import { type Corners, polygonOf } from '../../core/sketch/index.ts';
import { type Corner, placeAt, starCorners } from '../core/geometry/shapes.ts';

/** Random lawns for properties that hold for any. */

export const HOME: Position = [-83, 40];

/** What a lawn is made from: fast-check shrinks these, GeographicLib puts the corners down. */
export type LawnSeed = { readonly seed: number; readonly count: number; readonly radius: number };

/** Uneven outlines of about 100 to 100,000 m2. */
export const lawnSeeds: fc.Arbitrary<LawnSeed> = fc.record({
  seed: fc.integer(),
  count: fc.integer({ min: 4, max: 40 }),
  radius: fc.double({ min: 9, max: 240, noNaN: true }),
});

export const latitudes = fc.double({ min: -50, max: 65, noNaN: true });
export const longitudes = fc.double({ min: -179, max: 179, noNaN: true });

export const cornersOf = ({ seed, count, radius }: LawnSeed): readonly Corner[] =>
  starCorners(createRandom(seed), count, radius);

export const placed = (corners: readonly Corner[], centre = HOME): Corners =>
  corners.map((corner) => placeAt(centre, corner));

export const shifted = (corners: readonly Corner[], east: number, north: number): readonly Corner[] =>
  corners.map(([x, y]) => [x + east, y + north]);

export const lawnOf = (seed: LawnSeed, centre = HOME): AreaGeometry => polygonOf(placed(cornersOf(seed), centre));

export const areaSqM = (geometry: AreaGeometry): number => outlineArea(geometry).areaSqM ?? Number.NaN;

/** Length of all rings of an outline, metres, near enough for a tolerance. */
export function edgeMetres(geometry: AreaGeometry): number {
  let sum = 0;
  for (const ring of polygonsOf(geometry).flat()) {
    for (const [index, [longitude, latitude]] of ring.entries()) {
      const next = ring[index + 1];
      if (next === undefined) continue;
      const east = (next[0] - longitude) * 111_320 * Math.cos((latitude * Math.PI) / 180);
      sum += Math.hypot(east, (next[1] - latitude) * 111_320);
    }
  }
  return sum;
}

/**
 * What rounding may make of an area: places are written to 0.1 mm, so every edge lies within half of that diagonal, and
 * crossings are rounded to 10 micrometres. m2
 */
export const writtenTolerance = (...geometries: readonly AreaGeometry[]): number =>
  geometries.reduce((sum, each) => sum + edgeMetres(each), 0) * 0.0001 + 0.001;
