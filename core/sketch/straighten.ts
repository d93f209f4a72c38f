import { ok, type Result } from '../base/index.ts';
import type { PlanePoint } from '../geometry/index.ts';
import { quantity } from '../units/index.ts';
import { between, feetPlane, lengthOf } from './feet-plane.ts';
import { needless, refuse } from './refuse.ts';
import type { Straightened } from './square-up.ts';
import type { Corners } from './types.ts';

/**
 * Leaves out corners that lie within `toleranceFt` of the straight line between those that stay (the method of D. Douglas
 * and T. Peucker, 1973), as after a walk or a shaky hand. At least three corners stay.
 * Error: `nothing-to-do` where every corner is needed.
 */
export function straighten(corners: Corners, toleranceFt: number): Result<Straightened> {
  const [origin] = corners;
  if (origin === undefined || corners.length < 3) {
    return refuse('There are fewer than three corners.', 'Draw the outline first.');
  }
  const points = corners.map(feetPlane(origin).toFeet);
  const far = farthestFrom(points, 0, points.length, points[0], points[0]);
  const stays = new Set([0, far.index]);
  const strays = [
    thin(points, 0, far.index, toleranceFt, stays),
    thin(points, far.index, points.length, toleranceFt, stays),
  ];
  if (stays.size < 3 || stays.size === corners.length) {
    return needless(`No corner lies within ${toleranceFt} ft of a straight side.`, 'Widen the tolerance.');
  }
  return ok({
    corners: corners.filter((_, index) => stays.has(index)),
    movedFt: quantity<'ft'>(Math.max(...strays)),
  });
}

/** Marks the corners between two ends that stay; gives how far the others stray at most. */
function thin(
  points: readonly PlanePoint[],
  from: number,
  to: number,
  toleranceFt: number,
  stays: Set<number>,
): number {
  let strays = 0;
  const runs = [[from, to] as const];
  for (let run = runs.pop(); run !== undefined; run = runs.pop()) {
    const [start, end] = run;
    const far = farthestFrom(points, start + 1, end, points[start], points[end % points.length]);
    if (far.distance > toleranceFt) {
      stays.add(far.index);
      runs.push([start, far.index], [far.index, end]);
    } else if (end > start + 1) {
      strays = Math.max(strays, far.distance);
    }
  }
  return strays;
}

function farthestFrom(
  points: readonly PlanePoint[],
  start: number,
  end: number,
  from: PlanePoint | undefined,
  to: PlanePoint | undefined,
): { readonly index: number; readonly distance: number } {
  let best = { index: start, distance: -1 };
  for (let index = start; index < end; index += 1) {
    const point = points[index];
    if (point === undefined || from === undefined || to === undefined) continue;
    const distance = distanceToSide(point, from, to);
    if (distance > best.distance) best = { index, distance };
  }
  return best;
}

/** Distance of a point from a side, from its nearer end where it lies beyond; same unit as the points. */
export function distanceToSide(point: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const side = between(from, to);
  const square = side.x * side.x + side.y * side.y;
  const way = between(from, point);
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, (way.x * side.x + way.y * side.y) / square));
  return lengthOf(between({ x: side.x * share, y: side.y * share }, way));
}
