import { err, ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import { type LocalPlane, localPlane } from '../geometry/index.ts';
import { METRES_PER_FOOT } from '../units/index.ts';
import { type FitKind, fitMap, LEAST_PAIRS, usualFit } from './fit.ts';
import { type FlatPoint, mapPoint, type PlaneMap, type PointPair } from './transform.ts';

/** A point known both in a picture, in pixels from its upper left corner, and on the ground. */
export type ControlPoint = { readonly px: readonly [number, number]; readonly at: Position };

/** Width and height of a picture, pixels. */
export type PictureSize = { readonly widthPx: number; readonly heightPx: number };

/** Where a picture lies. */
export type Placement = {
  readonly fit: FitKind;
  /** Ground of the four corners: upper left, upper right, lower right, lower left. */
  readonly corners: readonly [Position, Position, Position, Position];
  /** How far each control point is from its place on the ground, ft. */
  readonly offFt: readonly number[];
  /** Root mean square of those; null where the points just suffice, so that any of them fits. */
  readonly rmsFt: number | null;
  /** Ground under the edge of one pixel in the middle of the picture, ft. */
  readonly pixelFt: number;
};

/** Control points farther apart than this are no plan of a lawn, metres. */
const LARGEST_SPREAD_M = 20_000;

/**
 * Lays a picture on the ground. Works in a plane that touches the ground at the first point; no distances are lost within a
 * few miles.
 *
 * @param fit the kind wanted; null for the one that the number of points allows
 * @returns fails with 'geometry-invalid' where the points are too few, on one spot or line, contradict each other in side, or
 *   put the horizon into the picture; 'geometry-too-large' where they are more than 20 km apart
 */
export function placePicture(
  size: PictureSize,
  points: readonly ControlPoint[],
  fit: FitKind | null = null,
): Result<Placement> {
  const kind = fit ?? usualFit(points.length);
  const [first] = points;
  if (first === undefined || points.length < LEAST_PAIRS[kind]) return tooFew(kind, points.length);
  const plane = localPlane(first.at);
  const pairs = points.map(({ px, at }) => ({ from: { x: px[0], y: px[1] }, to: plane.toPlane(at) }));
  if (pairs.some(({ to }) => !(Math.hypot(to.x, to.y) < LARGEST_SPREAD_M))) return tooFar();
  const map = fitMap(kind, pairs);
  if (map === null) return onOneLine(kind);
  return measure(size, pairs, { kind, map, plane });
}

type Fitted = { readonly kind: FitKind; readonly map: PlaneMap; readonly plane: LocalPlane };

function measure(size: PictureSize, pairs: readonly PointPair[], { kind, map, plane }: Fitted): Result<Placement> {
  const corners = cornersOf(size).map((corner) => mapPoint(map, corner));
  const [upperLeft, upperRight, lowerRight, lowerLeft] = corners;
  if (!upperLeft || !upperRight || !lowerRight || !lowerLeft) return horizon();
  if (turns(upperLeft, upperRight, lowerRight) > 0) return mirrored();
  const off = pairs.map(({ from, to }) => distance(mapPoint(map, from), to) / METRES_PER_FOOT);
  const spare = pairs.length > LEAST_PAIRS[kind];
  const rms = Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length);
  const middle = { x: size.widthPx / 2, y: size.heightPx / 2 };
  const beside = { x: middle.x + 1, y: middle.y };
  return ok({
    fit: kind,
    corners: [
      plane.toDegrees(upperLeft),
      plane.toDegrees(upperRight),
      plane.toDegrees(lowerRight),
      plane.toDegrees(lowerLeft),
    ],
    offFt: off,
    rmsFt: spare ? rms : null,
    pixelFt: distance(mapPoint(map, middle), mapPoint(map, beside) ?? middle) / METRES_PER_FOOT,
  });
}

/** The corners of a picture in its own pixels, in the order of `Placement.corners`. */
export function cornersOf({ widthPx, heightPx }: PictureSize): readonly FlatPoint[] {
  return [
    { x: 0, y: 0 },
    { x: widthPx, y: 0 },
    { x: widthPx, y: heightPx },
    { x: 0, y: heightPx },
  ];
}

function distance(one: FlatPoint | null, other: FlatPoint): number {
  return one === null ? Number.POSITIVE_INFINITY : Math.hypot(one.x - other.x, one.y - other.y);
}

/** Above zero for a turn to the left, seen from above. */
function turns(a: FlatPoint, b: FlatPoint, c: FlatPoint): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

const WHERE = 'points of the picture';

function tooFew(kind: FitKind, count: number): Result<never> {
  const detail = `${count} of the ${LEAST_PAIRS[kind]} points that are needed are set.`;
  return err('geometry-invalid', WHERE, detail, 'Set each point in the picture and on the map.');
}

function tooFar(): Result<never> {
  const detail = 'The points are more than 20 km apart on the map.';
  return err('geometry-too-large', WHERE, detail, 'Put the points where they belong.');
}

function onOneLine(kind: FitKind): Result<never> {
  const detail =
    kind === 'similarity' ? 'The points are on one spot.' : 'The points are on one line or contradict each other.';
  return err('geometry-invalid', WHERE, detail, 'Choose points in different corners of the picture.');
}

function mirrored(): Result<never> {
  const detail = 'With these points the picture would lie face down.';
  return err('geometry-invalid', WHERE, detail, 'Check whether two of the points were exchanged.');
}

function horizon(): Result<never> {
  const detail = 'With these points a part of the picture would lie beyond the horizon.';
  return err('geometry-invalid', WHERE, detail, 'Put the points farther apart, or check whether two were exchanged.');
}
