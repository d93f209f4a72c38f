import type { Position } from '../book/index.ts';
import type { PlanePoint } from '../geometry/index.ts';
import { METRES_PER_FOOT } from '../units/index.ts';
import { between, type FeetPlane, feetPlane, lengthOf } from './feet-plane.ts';
import { type SnapSide, type SnapTargets, sidesNear } from './snap-index.ts';
import type { Corners } from './types.ts';

/** What a pointer snapped to: a corner, a place on a side, or a crossing of the sides of two outlines. */
export type Snap = {
  readonly kind: 'corner' | 'edge' | 'crossing';
  readonly at: Position;
  /** Ids of the outlines it belongs to; none for the first corner of what is being drawn. */
  readonly of: readonly string[];
};

/** What is being drawn: its own outline is no target, but its first corner is, once there are three. */
export type SnapOwn = { readonly id?: string; readonly corners: Corners };

/** A cell of one degree of latitude is at least so many metres high; on the safe side. */
const METRES_PER_DEGREE = 110_000;

type Near = { readonly side: SnapSide; readonly from: PlanePoint; readonly to: PlanePoint };
type Found = { readonly snap: Snap; readonly distance: number };

/**
 * The place within `toleranceFt` that a position snaps to; null where there is none. The nearest corner comes first, then
 * the nearest crossing, then the nearest place on a side. The position is the origin of the plane, so distances are true.
 */
export function snapPoint(position: Position, targets: SnapTargets, toleranceFt: number, own?: SnapOwn): Snap | null {
  if (!(toleranceFt > 0)) return null;
  const plane = feetPlane(position);
  const near = nearSides(position, targets, toleranceFt, plane, own);
  const best =
    nearest(cornersNear(near, plane, own), toleranceFt) ??
    nearest(crossingsNear(near, plane), toleranceFt) ??
    nearest(
      near.map((each) => onSide(each, plane)),
      toleranceFt,
    );
  return best === null ? null : best.snap;
}

function nearSides(
  position: Position,
  targets: SnapTargets,
  toleranceFt: number,
  plane: FeetPlane,
  own: SnapOwn | undefined,
): readonly Near[] {
  const high = (toleranceFt * METRES_PER_FOOT) / METRES_PER_DEGREE;
  const wide = high / Math.max(0.01, Math.cos((position[1] * Math.PI) / 180));
  const near: Near[] = [];
  for (const side of sidesNear(targets, position, [wide, high])) {
    if (own?.id === side.id) continue;
    const [from, to] = [plane.toFeet(side.from), plane.toFeet(side.to)];
    if (lengthOf(nearestOf(from, to)) <= toleranceFt) near.push({ side, from, to });
  }
  return near;
}

function cornersNear(near: readonly Near[], plane: FeetPlane, own: SnapOwn | undefined): readonly Found[] {
  const found = near.flatMap(({ side, from, to }): readonly Found[] => [
    { snap: { kind: 'corner', at: side.from, of: [side.id] }, distance: lengthOf(from) },
    { snap: { kind: 'corner', at: side.to, of: [side.id] }, distance: lengthOf(to) },
  ]);
  const first = own?.corners[0];
  if (first === undefined || (own?.corners.length ?? 0) < 3) return found;
  return [{ snap: { kind: 'corner', at: first, of: [] }, distance: lengthOf(plane.toFeet(first)) }, ...found];
}

function crossingsNear(near: readonly Near[], plane: FeetPlane): readonly Found[] {
  return near.flatMap((each, index) =>
    near.slice(index + 1).flatMap((other): readonly Found[] => {
      const at = each.side.id === other.side.id ? null : crossing(each, other);
      if (at === null) return [];
      const of = [each.side.id, other.side.id];
      return [{ snap: { kind: 'crossing', at: plane.toDegrees(at), of }, distance: lengthOf(at) }];
    }),
  );
}

function crossing(left: Near, right: Near): PlanePoint | null {
  const way = between(left.from, left.to);
  const other = between(right.from, right.to);
  const apart = between(left.from, right.from);
  const cross = way.x * other.y - way.y * other.x;
  if (Math.abs(cross) < 1e-9 * lengthOf(way) * lengthOf(other) || cross === 0) return null;
  const share = (apart.x * other.y - apart.y * other.x) / cross;
  const otherShare = (apart.x * way.y - apart.y * way.x) / cross;
  if (share < 0 || share > 1 || otherShare < 0 || otherShare > 1) return null;
  return { x: left.from.x + way.x * share, y: left.from.y + way.y * share };
}

function onSide({ side, from, to }: Near, plane: FeetPlane): Found {
  const at = nearestOf(from, to);
  return { snap: { kind: 'edge', at: plane.toDegrees(at), of: [side.id] }, distance: lengthOf(at) };
}

/** The point of a side that is nearest to the origin. */
function nearestOf(from: PlanePoint, to: PlanePoint): PlanePoint {
  const way = between(from, to);
  const square = way.x * way.x + way.y * way.y;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, -(from.x * way.x + from.y * way.y) / square));
  return { x: from.x + way.x * share, y: from.y + way.y * share };
}

function nearest(found: readonly Found[], toleranceFt: number): Found | null {
  let best: Found | null = null;
  for (const each of found) {
    if (each.distance <= toleranceFt && (best === null || each.distance < best.distance)) best = each;
  }
  return best;
}
