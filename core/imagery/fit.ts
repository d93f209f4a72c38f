import { leastSquares } from './solve.ts';
import { chainMaps, evenFrame, type FlatPoint, mapPoint, type PlaneMap, type PointPair } from './transform.ts';

/** How a picture may be bent to fit: turned and scaled; also sheared; also tilted. */
export const FIT_KINDS = ['similarity', 'affine', 'projective'] as const;
/** One of `FIT_KINDS`. */
export type FitKind = (typeof FIT_KINDS)[number];

/** Pairs that each kind needs at least. */
export const LEAST_PAIRS: Readonly<Record<FitKind, number>> = { similarity: 2, affine: 3, projective: 4 };

/** The kind that a number of pairs allows when nobody asked for another: 2, 3, and 4 or more. */
export function usualFit(pairs: number): FitKind {
  return pairs >= 4 ? 'projective' : pairs === 3 ? 'affine' : 'similarity';
}

/**
 * The map of a kind that brings the first points of the pairs nearest to the second ones, by least squares in the second frame
 * (R. Hartley, A. Zisserman, Multiple View Geometry, ch. 4, from memory; the projective one by repeated weighting with the depth).
 * The first frame has y down, the second y up.
 *
 * @returns null where the pairs are too few, on one line or on one spot
 */
export function fitMap(kind: FitKind, pairs: readonly PointPair[]): PlaneMap | null {
  if (pairs.length < LEAST_PAIRS[kind]) return null;
  const from = evenFrame(pairs.map((pair) => pair.from));
  const to = evenFrame(pairs.map((pair) => pair.to));
  const even = pairs.map((pair) => ({ from: move(from.into, pair.from), to: move(to.into, pair.to) }));
  const map = { similarity, affine, projective }[kind](even);
  return map === null ? null : chainMaps(chainMaps(from.into, map), to.back);
}

function move(map: PlaneMap, point: FlatPoint): FlatPoint {
  return mapPoint(map, point) ?? point;
}

/** x' = a x + b y + c, y' = b x - a y + d: a turn and a scale of a frame whose y points down. */
function similarity(pairs: readonly PointPair[]): PlaneMap | null {
  const rows = pairs.flatMap(({ from }) => [
    [from.x, from.y, 1, 0],
    [-from.y, from.x, 0, 1],
  ]);
  const found = leastSquares(rows, rightSides(pairs));
  if (found === null) return null;
  const [a = 0, b = 0, c = 0, d = 0] = found;
  return Math.hypot(a, b) > SMALLEST_SCALE ? [a, b, c, b, -a, d, 0, 0, 1] : null;
}

const SMALLEST_SCALE = 1e-6;

function affine(pairs: readonly PointPair[]): PlaneMap | null {
  const rows = pairs.flatMap(({ from }) => [
    [from.x, from.y, 1, 0, 0, 0],
    [0, 0, 0, from.x, from.y, 1],
  ]);
  const found = leastSquares(rows, rightSides(pairs));
  if (found === null) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = found;
  return Math.abs(a * e - b * d) > SMALLEST_SCALE ? [a, b, c, d, e, f, 0, 0, 1] : null;
}

const ROUNDS = 8;

function projective(pairs: readonly PointPair[]): PlaneMap | null {
  let weights = pairs.map(() => 1);
  let map: PlaneMap | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    map = projectiveOnce(pairs, weights);
    if (map === null) return null;
    const [, , , , , , g, h] = map;
    const depths = pairs.map(({ from }) => g * from.x + h * from.y + 1);
    if (depths.some((depth) => !(depth > 0))) return null;
    weights = depths.map((depth) => 1 / depth);
  }
  return map;
}

function projectiveOnce(pairs: readonly PointPair[], weights: readonly number[]): PlaneMap | null {
  const rows = pairs.flatMap(({ from: { x, y }, to }, index) => {
    const weight = weights[index] ?? 1;
    return [
      [x, y, 1, 0, 0, 0, -to.x * x, -to.x * y],
      [0, 0, 0, x, y, 1, -to.y * x, -to.y * y],
    ].map((row) => row.map((value) => value * weight));
  });
  const sides = rightSides(pairs).map((value, index) => value * (weights[Math.floor(index / 2)] ?? 1));
  const found = leastSquares(rows, sides);
  if (found === null) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = found;
  return [a, b, c, d, e, f, g, h, 1];
}

function rightSides(pairs: readonly PointPair[]): readonly number[] {
  return pairs.flatMap(({ to }) => [to.x, to.y]);
}
