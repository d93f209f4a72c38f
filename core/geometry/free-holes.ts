import { PointInPolygonResult, pointInPolygon } from 'clipper2-ts';
import { type Box, boxesMeet, type GridPath, type GridPoint, type Region } from './region.ts';
import { sidesMeet } from './segments.ts';

/** Regions to be cut from another one, by how they lie. Those that lie free outside are in neither list. */
export type SortedOut = {
  /** Free inside: no contact with anything, neither in nor round another one. They are holes as they are. */
  readonly holes: readonly Region[];
  /** All others; only a boolean operation tells what they cut. */
  readonly tangled: readonly Region[];
};

/** Tells which of `others` can be cut from `region` by laying them in as holes. */
export function sortOut(region: Region, others: readonly Region[]): SortedOut {
  const holes: Region[] = [];
  const tangled: Region[] = [];
  for (const other of others) {
    const inside = other.paths.filter((path) => holdsStart(region, path)).length;
    const isMixed = inside > 0 && inside < other.paths.length;
    if (isMixed || isTangled(other, region, others)) tangled.push(other);
    else if (inside > 0) holes.push(other);
  }
  return { holes, tangled };
}

function isTangled(other: Region, region: Region, others: readonly Region[]): boolean {
  if (edgesMeet(other, region) || holdsStartOf(other, region)) return true;
  return others.some(
    (each) => each !== other && (edgesMeet(other, each) || holdsStartOf(other, each) || holdsStartOf(each, other)),
  );
}

/** True where a side of one region crosses or touches a side of the other. */
function edgesMeet(left: Region, right: Region): boolean {
  if (!boxesMeet(left.box, right.box)) return false;
  const rightSides = sidesNear(right.paths, left.box);
  if (rightSides.length === 0) return false;
  const leftSides = sidesNear(left.paths, right.box);
  for (let index = 1; index < leftSides.length; index += 2) {
    for (let other = 1; other < rightSides.length; other += 2) {
      const from = leftSides[index - 1];
      const to = leftSides[index];
      const otherFrom = rightSides[other - 1];
      const otherTo = rightSides[other];
      if (from && to && otherFrom && otherTo && sidesMeet(from, to, otherFrom, otherTo)) return true;
    }
  }
  return false;
}

/** The sides whose boxes meet `box`, as pairs of corners one after the other. */
function sidesNear(paths: readonly GridPath[], box: Box): readonly GridPoint[] {
  const near: GridPoint[] = [];
  for (const path of paths) {
    let from = path[path.length - 1];
    for (const to of path) {
      if (from !== undefined && meets(from, to, box)) near.push(from, to);
      from = to;
    }
  }
  return near;
}

function meets(from: GridPoint, to: GridPoint, box: Box): boolean {
  return !(
    (from.x < box.west && to.x < box.west) ||
    (from.x > box.east && to.x > box.east) ||
    (from.y < box.south && to.y < box.south) ||
    (from.y > box.north && to.y > box.north)
  );
}

/** True where a path of `inner` starts inside `outer`. Asked only of regions whose sides do not meet. */
function holdsStartOf(outer: Region, inner: Region): boolean {
  return boxesMeet(outer.box, inner.box) && inner.paths.some((path) => holdsStart(outer, path));
}

function holdsStart(outer: Region, path: GridPath): boolean {
  const start = path[0];
  return start !== undefined && isCovered(start, outer.paths);
}

/** True where a point lies in an odd number of a region's paths: inside its outer paths and outside their holes. */
function isCovered(point: GridPoint, paths: readonly GridPath[]): boolean {
  let isIn = false;
  for (const path of paths) {
    const where = pointInPolygon({ x: point.x, y: point.y }, path as { x: number; y: number }[]);
    if (where !== PointInPolygonResult.IsOutside) isIn = !isIn;
  }
  return isIn;
}
