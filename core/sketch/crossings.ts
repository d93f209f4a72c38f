import type { Position } from '../book/index.ts';
import { localPlane, type PlanePoint, STEPS_PER_METRE, turn } from '../geometry/index.ts';
import type { Corners } from './types.ts';

/** Two sides that meet though they are no neighbours. Side `i` runs from corner `i` to the next one. */
export type Crossing = {
  /** They go through each other, or only touch or run along each other. */
  readonly kind: 'crosses' | 'touches';
  readonly at: Position;
  readonly sides: readonly [number, number];
};

type Side = {
  readonly index: number;
  readonly from: PlanePoint;
  readonly to: PlanePoint;
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
};

/**
 * Where the sides of an outline meet, sorted by the lower side's number. Neighbours count where the second runs back
 * over the first. Corners are held to 10 micrometres. Sides sorted by their western ends are swept.
 */
export function crossingsOf(corners: Corners, closed: boolean): readonly Crossing[] {
  const sides = sidesOf(corners, closed);
  const order = sides.toSorted((left, right) => left.west - right.west);
  const found: Crossing[] = [];
  for (const [place, side] of order.entries()) {
    for (let other = place + 1; other < order.length; other += 1) {
      const against = order[other];
      if (against === undefined || against.west > side.east) break;
      const crossing = compare(side, against, corners, closed);
      if (crossing !== null) found.push(crossing);
    }
  }
  return found.sort((left, right) => left.sides[0] - right.sides[0] || left.sides[1] - right.sides[1]);
}

/** The same for one side against all others: enough after a corner was added at the end of an open outline. */
export function crossingsOfSide(corners: Corners, closed: boolean, index: number): readonly Crossing[] {
  const sides = sidesOf(corners, closed);
  const side = sides[index];
  if (side === undefined) return [];
  return sides.flatMap((against) => (against === side ? [] : (compare(side, against, corners, closed) ?? [])));
}

function sidesOf(corners: Corners, closed: boolean): readonly Side[] {
  const [origin] = corners;
  if (origin === undefined || corners.length < 2) return [];
  const plane = localPlane(origin);
  const points = corners.map((corner) => {
    const { x, y } = plane.toPlane(corner);
    return { x: Math.round(x * STEPS_PER_METRE), y: Math.round(y * STEPS_PER_METRE) };
  });
  const count = closed && points.length > 2 ? points.length : points.length - 1;
  return points.slice(0, count).map((from, index) => sideOf(index, from, points[index + 1] ?? points[0] ?? from));
}

function sideOf(index: number, from: PlanePoint, to: PlanePoint): Side {
  return {
    index,
    from,
    to,
    west: Math.min(from.x, to.x),
    east: Math.max(from.x, to.x),
    south: Math.min(from.y, to.y),
    north: Math.max(from.y, to.y),
  };
}

function compare(left: Side, right: Side, corners: Corners, closed: boolean): Crossing | null {
  if (left.south > right.north || left.north < right.south) return null;
  if (left.west > right.east || left.east < right.west) return null;
  const [first, second] = left.index < right.index ? [left, right] : [right, left];
  const isNext = second.index === first.index + 1;
  const isRound = closed && first.index === 0 && second.index === corners.length - 1;
  if (isNext || isRound) {
    const retraced = isNext ? foldsBack(first, second) : foldsBack(second, first);
    return retraced ? touch(first, second, isNext ? second.from : first.from, corners) : null;
  }
  return meet(first, second, corners);
}

/** True where a side runs back over the one before it. */
function foldsBack(before: Side, after: Side): boolean {
  const [ax, ay] = [before.to.x - before.from.x, before.to.y - before.from.y];
  const [bx, by] = [after.to.x - after.from.x, after.to.y - after.from.y];
  return ax * by - ay * bx === 0 && ax * bx + ay * by < 0;
}

function meet(first: Side, second: Side, corners: Corners): Crossing | null {
  const start = turn(second.from, second.to, first.from);
  const end = turn(second.from, second.to, first.to);
  if (start * end > 0) return null;
  const otherStart = turn(first.from, first.to, second.from);
  const otherEnd = turn(first.from, first.to, second.to);
  if (otherStart * otherEnd > 0) return null;
  if (start !== 0 && end !== 0 && otherStart !== 0 && otherEnd !== 0) {
    const share = start / (start - end);
    const at = pointAlong(first, share);
    return { kind: 'crosses', at: toDegrees(at, corners), sides: [first.index, second.index] };
  }
  if (start === 0 && isOn(first.from, second)) return touch(first, second, first.from, corners);
  if (end === 0 && isOn(first.to, second)) return touch(first, second, first.to, corners);
  if (otherStart === 0 && isOn(second.from, first)) return touch(first, second, second.from, corners);
  if (otherEnd === 0 && isOn(second.to, first)) return touch(first, second, second.to, corners);
  return null;
}

function touch(first: Side, second: Side, at: PlanePoint, corners: Corners): Crossing {
  return { kind: 'touches', at: toDegrees(at, corners), sides: [first.index, second.index] };
}

function isOn({ x, y }: PlanePoint, side: Side): boolean {
  return x >= side.west && x <= side.east && y >= side.south && y <= side.north;
}

function pointAlong({ from, to }: Side, share: number): PlanePoint {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

function toDegrees({ x, y }: PlanePoint, corners: Corners): Position {
  const plane = localPlane(corners[0] ?? [0, 0]);
  return plane.toDegrees({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE });
}
