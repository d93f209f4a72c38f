import { ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { PlanePoint } from '../geometry/index.ts';
import { between, feetPlane, lengthOf } from './feet-plane.ts';
import { refuse } from './refuse.ts';
import type { Corners } from './types.ts';

/** How far a rectangle reaches from its first side. */
export type RectangleDepth =
  | { readonly kind: 'through'; readonly point: Position }
  /** To the left of the way from the first corner to the second; to the right where negative. */
  | { readonly kind: 'depth'; readonly depthFt: number };

/** Shorter sides are slips of the hand, ft. */
const LEAST_SIDE_FT = 0.1;
/** Farther than this no circle of turf reaches, ft. */
const LARGEST_RADIUS_FT = 15_000;
const FEWEST_CORNERS = 12;
const MOST_CORNERS = 360;

/**
 * The rectangle on the side from `from` to `to` that reaches through a point, or a number of feet deep.
 * Error: `geometry-invalid` where a side would be shorter than 0.1 ft.
 */
export function rectangleBySides(from: Position, to: Position, depth: RectangleDepth): Result<Corners> {
  const plane = feetPlane(from);
  const side = between({ x: 0, y: 0 }, plane.toFeet(to));
  const length = lengthOf(side);
  if (!(length >= LEAST_SIDE_FT)) return refuse('The first side of the rectangle has no length.', 'Set two corners.');
  const left: PlanePoint = { x: -side.y / length, y: side.x / length };
  const depthFt = depth.kind === 'depth' ? depth.depthFt : along(plane.toFeet(depth.point), left);
  if (!(Math.abs(depthFt) >= LEAST_SIDE_FT) || !Number.isFinite(depthFt)) {
    return refuse('The rectangle has no depth.', 'Set the third point away from the first side.');
  }
  const step = { x: left.x * depthFt, y: left.y * depthFt };
  return ok([from, to, plane.toDegrees({ x: side.x + step.x, y: side.y + step.y }), plane.toDegrees(step)]);
}

/**
 * A circle as an outline of as many corners as keep it within `toleranceFt` of the true one, 12 to 360. Its corners
 * stand a little outside the circle so that its area is that of the circle, not less.
 * Error: `geometry-invalid` for a radius under 0.1 ft or over 15,000 ft.
 */
export function circleAround(centre: Position, radiusFt: number, toleranceFt = 0.05): Result<Corners> {
  if (!(radiusFt >= LEAST_SIDE_FT && radiusFt <= LARGEST_RADIUS_FT)) {
    return refuse('The circle has no radius that could be drawn.', 'Set a point on its rim.');
  }
  const plane = feetPlane(centre);
  const count = cornersOfCircle(radiusFt, toleranceFt);
  const step = (2 * Math.PI) / count;
  const reach = radiusFt * Math.sqrt(step / Math.sin(step));
  return ok(
    Array.from({ length: count }, (_, index) =>
      plane.toDegrees({ x: reach * Math.cos(index * step), y: reach * Math.sin(index * step) }),
    ),
  );
}

/** The circle round a centre whose rim goes through a point; tolerance (ft) and error as of `circleAround`. */
export function circleThrough(centre: Position, rim: Position, toleranceFt?: number): Result<Corners> {
  return circleAround(centre, lengthOf(feetPlane(centre).toFeet(rim)), toleranceFt);
}

function cornersOfCircle(radiusFt: number, toleranceFt: number): number {
  const share = Math.min(1, Math.max(1e-9, toleranceFt / radiusFt));
  const count = Math.ceil(Math.PI / Math.acos(1 - share));
  return Math.min(MOST_CORNERS, Math.max(FEWEST_CORNERS, count));
}

function along(point: PlanePoint, way: PlanePoint): number {
  return point.x * way.x + point.y * way.y;
}
