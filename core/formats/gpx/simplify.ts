import type { PlanePoint } from '../../geometry/index.ts';

/**
 * Leaves out points that lie within `toleranceM` of the segment that replaces them. Keeps the first and the last point.
 * One pass: from each kept point, the directions that pass every skipped point near enough are narrowed until the next point
 * lies outside of them (the sleeve or cone method; H. Imai and M. Iri describe it, 1988, from memory). Linear in the number
 * of points, so no drawing can make it slow. Turning back along the line ends a segment too.
 *
 * @returns indexes of the kept points
 */
export function simplify(points: readonly PlanePoint[], toleranceM: number): readonly number[] {
  const last = points.length - 1;
  if (last < 2 || toleranceM <= 0) return points.map((_, index) => index);
  const kept = [0];
  let cone = openCone(points[0]);
  for (let index = 1; index <= last; index += 1) {
    const point = points[index] as PlanePoint;
    if (!reaches(cone, point, toleranceM)) {
      kept.push(index - 1);
      cone = openCone(points[index - 1]);
    }
    narrow(cone, point, toleranceM);
  }
  return [...kept, last];
}

/** Directions from a kept point, as an angle range round the first direction. */
type Cone = { readonly from: PlanePoint; middle: number | null; low: number; high: number; farthest: number };

function openCone(from: PlanePoint | undefined): Cone {
  return { from: from ?? { x: 0, y: 0 }, middle: null, low: -Math.PI, high: Math.PI, farthest: 0 };
}

function reaches(cone: Cone, point: PlanePoint, tolerance: number): boolean {
  if (cone.middle === null) return true;
  const distance = Math.hypot(point.x - cone.from.x, point.y - cone.from.y);
  if (distance < cone.farthest) return false;
  const turn = turnFrom(cone.middle, cone.from, point);
  return distance <= tolerance || (turn >= cone.low && turn <= cone.high);
}

function narrow(cone: Cone, point: PlanePoint, tolerance: number): void {
  const distance = Math.hypot(point.x - cone.from.x, point.y - cone.from.y);
  cone.farthest = Math.max(cone.farthest, distance);
  if (distance <= tolerance) return;
  cone.middle ??= Math.atan2(point.y - cone.from.y, point.x - cone.from.x);
  const turn = turnFrom(cone.middle, cone.from, point);
  const half = Math.asin(tolerance / distance);
  cone.low = Math.max(cone.low, turn - half);
  cone.high = Math.min(cone.high, turn + half);
}

/** The angle from the middle direction to that of a point, between -pi and pi. */
function turnFrom(middle: number, from: PlanePoint, point: PlanePoint): number {
  const turn = Math.atan2(point.y - from.y, point.x - from.x) - middle;
  return turn > Math.PI ? turn - 2 * Math.PI : turn < -Math.PI ? turn + 2 * Math.PI : turn;
}
