import type { GridPath, GridPoint } from './region.ts';
import { isBetween, sidesMeet, turn } from './segments.ts';

/** Where sides meet that are not neighbours in one path. */
export type Contacts = {
  /** Places where two sides cross properly, in the order of their western ends; at most `MOST_PLACES`. */
  readonly crossings: readonly GridPoint[];
  /** Number of proper crossings. */
  readonly crossingCount: number;
  /** The first place where sides only touch or run along each other, if any. */
  readonly touch: GridPoint | null;
};

const MOST_PLACES = 16;
/** A single path of no more sides than this is compared side by side; sorting would take longer. */
const FEW_SIDES = 40;

type Side = {
  readonly from: GridPoint;
  readonly to: GridPoint;
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
  readonly path: number;
  readonly index: number;
};

type Found = { crossings: GridPoint[]; crossingCount: number; touch: GridPoint | null };

/**
 * All contacts between the sides of one or more closed paths: sides sorted by their western ends are swept, and only those
 * whose boxes meet are compared.
 */
export function findContacts(paths: readonly GridPath[]): Contacts {
  const [only] = paths;
  if (paths.length === 1 && only !== undefined && only.length <= FEW_SIDES && !hasContact(only)) return NO_CONTACTS;
  const sides = sidesOf(paths).sort((left, right) => left.west - right.west);
  const found: Found = { crossings: [], crossingCount: 0, touch: null };
  const count = sides.length;
  for (let index = 0; index < count; index += 1) {
    const side = sides[index];
    if (side === undefined) break;
    for (let other = index + 1; other < count; other += 1) {
      const against = sides[other];
      if (against === undefined || against.west > side.east) break;
      if (against.south > side.north || against.north < side.south) continue;
      if (side.path === against.path && areNeighbours(side.index, against.index, paths[side.path]?.length ?? 0))
        continue;
      compare(side, against, found);
    }
  }
  return found;
}

const NO_CONTACTS: Contacts = { crossings: [], crossingCount: 0, touch: null };

/** True where two sides of the path that are not neighbours meet. */
function hasContact(path: GridPath): boolean {
  const count = path.length;
  for (let index = 0; index < count - 2; index += 1) {
    const from = path[index];
    const to = path[index + 1];
    const end = index === 0 ? count - 1 : count;
    for (let other = index + 2; other < end; other += 1) {
      const otherFrom = path[other];
      const otherTo = path[other + 1 === count ? 0 : other + 1];
      if (from === undefined || to === undefined || otherFrom === undefined || otherTo === undefined) return true;
      if (boxesKeepApart(from, to, otherFrom, otherTo)) continue;
      if (sidesMeet(from, to, otherFrom, otherTo)) return true;
    }
  }
  return false;
}

function boxesKeepApart(from: GridPoint, to: GridPoint, otherFrom: GridPoint, otherTo: GridPoint): boolean {
  return (
    (from.x < otherFrom.x && from.x < otherTo.x && to.x < otherFrom.x && to.x < otherTo.x) ||
    (from.x > otherFrom.x && from.x > otherTo.x && to.x > otherFrom.x && to.x > otherTo.x) ||
    (from.y < otherFrom.y && from.y < otherTo.y && to.y < otherFrom.y && to.y < otherTo.y) ||
    (from.y > otherFrom.y && from.y > otherTo.y && to.y > otherFrom.y && to.y > otherTo.y)
  );
}

function sidesOf(paths: readonly GridPath[]): Side[] {
  const sides: Side[] = [];
  for (let path = 0; path < paths.length; path += 1) {
    const points = paths[path] ?? [];
    let from = points[points.length - 1];
    for (let index = 0; index < points.length; index += 1) {
      const to = points[index];
      if (from === undefined || to === undefined) break;
      sides.push({
        from,
        to,
        west: Math.min(from.x, to.x),
        east: Math.max(from.x, to.x),
        south: Math.min(from.y, to.y),
        north: Math.max(from.y, to.y),
        path,
        index,
      });
      from = to;
    }
  }
  return sides;
}

function areNeighbours(left: number, right: number, count: number): boolean {
  const gap = Math.abs(left - right);
  return gap === 1 || gap === count - 1;
}

function compare(side: Side, against: Side, found: Found): void {
  const start = turn(against.from, against.to, side.from);
  const end = turn(against.from, against.to, side.to);
  if ((start > 0 && end > 0) || (start < 0 && end < 0)) return;
  const otherStart = turn(side.from, side.to, against.from);
  const otherEnd = turn(side.from, side.to, against.to);
  if ((otherStart > 0 && otherEnd > 0) || (otherStart < 0 && otherEnd < 0)) return;
  if (start !== 0 && end !== 0 && otherStart !== 0 && otherEnd !== 0) {
    found.crossingCount += 1;
    if (found.crossings.length < MOST_PLACES) found.crossings.push(between(side.from, side.to, start / (start - end)));
    return;
  }
  found.touch ??= touchOf(side, against, start, end, otherStart, otherEnd);
}

function touchOf(
  side: Side,
  against: Side,
  start: number,
  end: number,
  first: number,
  second: number,
): GridPoint | null {
  if (start === 0 && isBetween(side.from, against.from, against.to)) return side.from;
  if (end === 0 && isBetween(side.to, against.from, against.to)) return side.to;
  if (first === 0 && isBetween(against.from, side.from, side.to)) return against.from;
  if (second === 0 && isBetween(against.to, side.from, side.to)) return against.to;
  return null;
}

function between(from: GridPoint, to: GridPoint, share: number): GridPoint {
  return { x: Math.round(from.x + (to.x - from.x) * share), y: Math.round(from.y + (to.y - from.y) * share) };
}
