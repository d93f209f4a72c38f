import type { SquareMetres } from '../units/index.ts';
import { quantity } from '../units/index.ts';

/** Steps of the plane's grid per metre: corners are held as whole steps of 10 micrometres. */
export const STEPS_PER_METRE = 100_000;

/** A corner in whole grid steps east and north of the plane's origin. */
export type GridPoint = { readonly x: number; readonly y: number };
/** A closed path without its last corner repeated. */
export type GridPath = readonly GridPoint[];
/** Smallest upright rectangle around something, in grid steps. */
export type Box = { readonly west: number; readonly south: number; readonly east: number; readonly north: number };

/**
 * Ground in a local plane. Outer paths run anticlockwise and holes clockwise, so that every point is inside once or not
 * at all; the area is the plain sum of the paths' signed areas, and paths of several regions laid together unite under
 * nonzero filling.
 */
export type Region = { readonly paths: readonly GridPath[]; readonly box: Box };

export const EMPTY_BOX: Box = {
  west: Number.POSITIVE_INFINITY,
  south: Number.POSITIVE_INFINITY,
  east: Number.NEGATIVE_INFINITY,
  north: Number.NEGATIVE_INFINITY,
};
/** The region that covers nothing. */
export const EMPTY_REGION: Region = { paths: [], box: EMPTY_BOX };

/** Twice the signed area of a path in square grid steps; positive where it runs anticlockwise. */
export function doubleArea(path: GridPath): number {
  const first = path[0];
  let previous = path[path.length - 1];
  if (first === undefined || previous === undefined) return 0;
  let sum = 0;
  for (const point of path) {
    sum += (previous.x - first.x) * (point.y - first.y) - (point.x - first.x) * (previous.y - first.y);
    previous = point;
  }
  return sum;
}

/** Area of a region by the shoelace sum over its paths, m2. */
export function regionArea(region: Region): SquareMetres {
  let sum = 0;
  for (const path of region.paths) sum += doubleArea(path);
  return quantity<'m2'>(sum / 2 / STEPS_PER_METRE / STEPS_PER_METRE);
}

/** Length of a closed path, metres. */
export function pathLength(path: GridPath): number {
  let previous = path[path.length - 1];
  if (previous === undefined) return 0;
  let sum = 0;
  for (const point of path) {
    sum += Math.hypot(point.x - previous.x, point.y - previous.y);
    previous = point;
  }
  return sum / STEPS_PER_METRE;
}

export function boxOf(paths: readonly GridPath[]): Box {
  let { west, south, east, north } = EMPTY_BOX;
  for (const path of paths) {
    for (const { x, y } of path) {
      if (x < west) west = x;
      if (x > east) east = x;
      if (y < south) south = y;
      if (y > north) north = y;
    }
  }
  return { west, south, east, north };
}

/** True where two boxes share at least a point. */
export function boxesMeet(left: Box, right: Box): boolean {
  return left.west <= right.east && right.west <= left.east && left.south <= right.north && right.south <= left.north;
}

/** A region of paths that already obey its rules about direction. */
export function regionOf(paths: readonly GridPath[]): Region {
  return paths.length === 0 ? EMPTY_REGION : { paths, box: boxOf(paths) };
}

/** True for a region that covers nothing. */
export function isEmpty(region: Region): boolean {
  return region.paths.length === 0;
}
