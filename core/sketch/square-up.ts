import { ok, type Result } from '../base/index.ts';
import type { PlanePoint } from '../geometry/index.ts';
import { type Feet, quantity } from '../units/index.ts';
import { crossingsOf } from './crossings.ts';
import { between, feetPlane, lengthOf } from './feet-plane.ts';
import { needless, refuse } from './refuse.ts';
import type { Corners } from './types.ts';

/** An outline put straight, and how far its farthest-moved corner went, ft. */
export type Straightened = { readonly corners: Corners; readonly movedFt: Feet };

/** Smaller moves are rounding, ft. */
const LEAST_MOVE_FT = 0.001;

type Way = 'along' | 'across' | 'free';

/**
 * Squares an outline up: sides within `toleranceDeg` of its main direction, or of the right angle to it, are turned into
 * it; other sides stay free. The main direction is the mean of all sides' directions modulo 90 degrees, weighed by length.
 * Of all outlines with these sides straight it is the one whose corners move least (sum of squares).
 * Errors: `nothing-to-do` where it is square already or no side lies near a right angle; `geometry-invalid` where nothing
 * would be left of it, or it would cross itself.
 */
export function squareUp(corners: Corners, toleranceDeg = 20): Result<Straightened> {
  const [origin] = corners;
  if (origin === undefined || corners.length < 3) {
    return refuse('There are fewer than three corners.', 'Draw the outline first.');
  }
  const plane = feetPlane(origin);
  const points = corners.map(plane.toFeet);
  const direction = mainDirection(points, toleranceDeg);
  const turned = points.map((point) => turnBy(point, -direction));
  const ways = turned.map((point, index) => wayOf(between(point, nextOf(turned, index)), toleranceDeg));
  if (!hasRightAngle(ways)) {
    return needless(
      `No two neighbouring sides are within ${toleranceDeg} degrees of a right angle.`,
      'Move the corners closer to square first, or widen the tolerance.',
    );
  }
  const squared = levelled(turned, ways).map((point) => turnBy(point, direction));
  return judged(corners, points, squared, (point) => plane.toDegrees(point));
}

function judged(
  corners: Corners,
  points: readonly PlanePoint[],
  squared: readonly PlanePoint[],
  toDegrees: (point: PlanePoint) => Corners[number],
): Result<Straightened> {
  const moves = squared.map((point, index) => lengthOf(between(points[index] ?? point, point)));
  const movedFt = quantity<'ft'>(Math.max(...moves));
  if (movedFt < LEAST_MOVE_FT) return needless('The outline is square already.', 'Nothing needs to be done.');
  if (squared.some((point, index) => lengthOf(between(point, nextOf(squared, index))) < LEAST_MOVE_FT)) {
    return refuse('Two corners would fall together.', 'Delete one of the corners that lie close together first.');
  }
  const made = squared.map((point, index) => kept(corners, moves, index) ?? toDegrees(point));
  if (crossingsOf(made, true).length > crossingsOf(corners, true).length) {
    return refuse('Squared up, the outline would cross itself.', 'Straighten it first, or take a smaller tolerance.');
  }
  return ok({ corners: made, movedFt });
}

function kept(corners: Corners, moves: readonly number[], index: number): Corners[number] | undefined {
  return (moves[index] ?? 0) < 1e-9 ? corners[index] : undefined;
}

/** Angle of the main direction from east, radians: a first mean over all sides, then over those near it. */
function mainDirection(points: readonly PlanePoint[], toleranceDeg: number): number {
  let direction = meanDirection(points, 0, 90);
  for (let round = 0; round < 3; round += 1) direction = meanDirection(points, direction, toleranceDeg);
  return direction;
}

function meanDirection(points: readonly PlanePoint[], near: number, toleranceDeg: number): number {
  let [x, y] = [0, 0];
  for (const [index, point] of points.entries()) {
    const side = between(point, nextOf(points, index));
    const angle = Math.atan2(side.y, side.x);
    if (Math.abs(offSquare(angle - near)) > toleranceDeg) continue;
    x += lengthOf(side) * Math.cos(4 * angle);
    y += lengthOf(side) * Math.sin(4 * angle);
  }
  return x === 0 && y === 0 ? near : Math.atan2(y, x) / 4;
}

/** How far an angle (radians) is from the nearest multiple of 90 degrees; degrees. */
function offSquare(angle: number): number {
  const degrees = (angle * 180) / Math.PI;
  return degrees - 90 * Math.round(degrees / 90);
}

function wayOf(side: PlanePoint, toleranceDeg: number): Way {
  const angle = Math.atan2(side.y, side.x);
  if (Math.abs(offSquare(angle)) > toleranceDeg) return 'free';
  return Math.abs(side.x) >= Math.abs(side.y) ? 'along' : 'across';
}

function hasRightAngle(ways: readonly Way[]): boolean {
  return ways.some((way, index) => {
    const next = nextOf(ways, index);
    return way !== 'free' && next !== 'free' && way !== next;
  });
}

/** Both ends of a side along get the same y, both ends of one across the same x: the means over each run of corners. */
function levelled(points: readonly PlanePoint[], ways: readonly Way[]): readonly PlanePoint[] {
  const xs = meansOfRuns(
    points.map((point) => point.x),
    ways,
    'across',
  );
  const ys = meansOfRuns(
    points.map((point) => point.y),
    ways,
    'along',
  );
  return points.map(({ x, y }, index) => ({ x: xs[index] ?? x, y: ys[index] ?? y }));
}

function meansOfRuns(values: readonly number[], ways: readonly Way[], way: Way): readonly number[] {
  const count = values.length;
  const start = ways.findIndex((each) => each !== way) + 1;
  const means = [...values];
  let run: number[] = [];
  for (let step = 0; step < count; step += 1) {
    const index = (start + step) % count;
    run.push(index);
    if (ways[index] === way) continue;
    const mean = run.reduce((sum, each) => sum + (values[each] ?? 0), 0) / run.length;
    for (const each of run) means[each] = mean;
    run = [];
  }
  return means;
}

function nextOf<Item>(items: readonly Item[], index: number): Item {
  return items[(index + 1) % items.length] as Item;
}

function turnBy({ x, y }: PlanePoint, angle: number): PlanePoint {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return { x: cosine * x - sine * y, y: sine * x + cosine * y };
}
