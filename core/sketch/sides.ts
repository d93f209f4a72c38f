import { ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { PlanePoint } from '../geometry/index.ts';
import { type Degrees, type Feet, quantity } from '../units/index.ts';
import { bearingOf, between, type FeetPlane, feetPlane, halfTurn, lengthOf, sum, vectorOf } from './feet-plane.ts';
import { needless, refuse } from './refuse.ts';
import type { Corners } from './types.ts';

/** One side of an outline as a row of a table. */
export type OutlineSide = {
  readonly from: Position;
  readonly to: Position;
  readonly lengthFt: Feet;
  /** Clockwise from north, in [0, 360). */
  readonly bearingDeg: Degrees;
  /**
   * By how much the way turns at the start corner, clockwise, in (-180, 180]; null at the first corner of an open
   * outline.
   */
  readonly turnDeg: Degrees | null;
};

/** What is typed over in a row; what is not given stays. */
export type SideChange = { readonly lengthFt?: number; readonly bearingDeg?: number; readonly turnDeg?: number };

/** The sides of an outline, the closing one last. Lengths and bearings are those of the plane at the first corner. */
export function sidesOf(corners: Corners, closed = true): readonly OutlineSide[] {
  const [origin] = corners;
  if (origin === undefined || corners.length < 2) return [];
  const plane = feetPlane(origin);
  const points = corners.map(plane.toFeet);
  const steps = stepsOf(points, closed);
  return steps.map((step, index) => {
    const before = index === 0 && closed ? steps.at(-1) : steps[index - 1];
    return {
      from: corners[index] ?? origin,
      to: corners[(index + 1) % corners.length] ?? origin,
      lengthFt: quantity<'ft'>(lengthOf(step)),
      bearingDeg: quantity<'deg'>(bearingOf(step)),
      turnDeg: before === undefined ? null : quantity<'deg'>(halfTurn(bearingOf(step) - bearingOf(before))),
    };
  });
}

/**
 * The outline with one side typed anew. The side's start stays; its end and all corners after it go along, so that the
 * closing side takes up the difference. With a new length or bearing the sides after it keep their bearings; with a new
 * turn they keep their turns, so the rest swings round with it; but at the first corner the last one stays, or its turn
 * would stay the same. On the closing side it is the first corner that moves.
 * Errors: `nothing-to-do` for no such side, `geometry-invalid` for a length that is not above zero.
 */
export function withSide(corners: Corners, index: number, change: SideChange): Result<Corners> {
  const [origin] = corners;
  const side = sidesOf(corners)[index];
  if (origin === undefined || side === undefined) return needless('The outline has no such side.', 'Choose a side.');
  const { lengthFt = side.lengthFt } = change;
  const swing = swingOf(side, change);
  if (!(lengthFt > 0) || !Number.isFinite(lengthFt + swing)) {
    return refuse('A side has to be longer than nothing.', 'Type a length in feet, or delete the corner.');
  }
  const plane = feetPlane(origin);
  const points = corners.map(plane.toFeet);
  const start = points[index] ?? { x: 0, y: 0 };
  const end = sum(start, vectorOf(lengthFt, side.bearingDeg + swing));
  if (change.turnDeg === undefined) return ok(moveRest(corners, points, index, end, 0, plane));
  const swung = moveRest(corners, points, index, end, swing, plane);
  return ok(index === 0 ? swung.with(-1, corners.at(-1) ?? origin) : swung);
}

/**
 * The place so many feet away in a direction, degrees clockwise from north: the next corner of an outline that is
 * typed.
 */
export function placeAlong(from: Position, bearingDeg: number, lengthFt: number): Position {
  return feetPlane(from).toDegrees(vectorOf(lengthFt, bearingDeg));
}

function swingOf(side: OutlineSide, { bearingDeg, turnDeg }: SideChange): number {
  if (turnDeg !== undefined) return turnDeg - (side.turnDeg ?? 0);
  return bearingDeg === undefined ? 0 : bearingDeg - side.bearingDeg;
}

function moveRest(
  corners: Corners,
  points: readonly PlanePoint[],
  index: number,
  end: PlanePoint,
  swingDeg: number,
  plane: FeetPlane,
): Corners {
  const next = (index + 1) % points.length;
  if (next === 0) return corners.with(0, plane.toDegrees(end));
  const pivot = points[next] ?? end;
  return corners.map((corner, at) => {
    const point = points[at];
    if (at < next || point === undefined) return corner;
    return plane.toDegrees(sum(end, turnClockwise(between(pivot, point), swingDeg)));
  });
}

function turnClockwise(vector: PlanePoint, angleDeg: number): PlanePoint {
  return vectorOf(lengthOf(vector), bearingOf(vector) + angleDeg);
}

function stepsOf(points: readonly PlanePoint[], closed: boolean): readonly PlanePoint[] {
  return points.flatMap((point, index) => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined);
    return next === undefined ? [] : [between(point, next)];
  });
}
