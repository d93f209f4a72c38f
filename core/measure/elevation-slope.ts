import type { AreaGeometry, Position } from '../book/index.ts';
import { boundingBox, containsPosition, localPlane, type PlanePoint } from '../geometry/index.ts';

/** A height at a position, metres; null where there is none. */
export type HeightSample = { readonly position: Position; readonly heightM: number | null };

/** The slope of the plane that lies best through some heights, or why there is none. */
export type FittedSlope =
  | {
      readonly kind: 'slope';
      /** From level. */
      readonly slopeDeg: number;
      /** Which way it falls, clockwise from north; of no meaning on level ground. */
      readonly downhillDeg: number;
      /** Root mean square of the heights' distances from the plane: how little of a plane the ground is. */
      readonly residualM: number;
      /** Samples with a height. */
      readonly samples: number;
    }
  | { readonly kind: 'none'; readonly why: string };

/** Fewer heights than this say nothing about a plane: three always lie on one. */
const LEAST_SAMPLES = 4;
/** Samples that spread less than this to one side lie on a line, as a share of their spread along it. */
const LEAST_SPREAD = 0.01;

/**
 * Positions on a square grid inside an outline, for asking heights at. At least one where the outline has any corner.
 *
 * @param most how many positions the grid over the outline's box may have
 */
export function sampleGrid(geometry: AreaGeometry, most = 400): readonly Position[] {
  const box = boundingBox([geometry]);
  if (box === null) return [];
  const [west, south, east, north] = box;
  const middle: Position = [(west + east) / 2, (south + north) / 2];
  const plane = localPlane(middle);
  const corner = plane.toPlane([east, north]);
  const [width, height] = [2 * corner.x, 2 * corner.y];
  const step = Math.max(Math.sqrt((width * height) / most), width / most, height / most, Number.MIN_VALUE);
  // Whole steps, whatever the last digits say.
  const count = (length: number): number => Math.max(1, Math.floor(length / step + 0.001));
  const [columns, rows] = [count(width), count(height)];
  const grid = Array.from({ length: columns * rows }, (_, index) => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    const x = ((column + 0.5) / columns - 0.5) * width;
    return plane.toDegrees({ x, y: ((row + 0.5) / rows - 0.5) * height });
  });
  const inside = grid.filter((position) => containsPosition(geometry, position));
  return inside.length > 0 ? inside : [middle];
}

/**
 * Fits a plane to heights by least squares (normal equations in metres east and north of the samples' middle) and gives its
 * slope. On ground that is no plane this is the slope of the whole, and the residual shows how far single places differ.
 */
export function slopeFromHeights(samples: readonly HeightSample[]): FittedSlope {
  const known = samples.flatMap(({ position, heightM }) => (heightM === null ? [] : [{ position, heightM }]));
  const [first] = known;
  if (first === undefined) return none('The file has no heights there.');
  if (known.length < LEAST_SAMPLES)
    return none(`There are only ${known.length} heights; a slope needs ${LEAST_SAMPLES}.`);
  const plane = localPlane(first.position);
  const points = known.map(({ position, heightM }) => ({ ...plane.toPlane(position), z: heightM }));
  const middle = {
    x: mean(points.map(({ x }) => x)),
    y: mean(points.map(({ y }) => y)),
    z: mean(points.map(({ z }) => z)),
  };
  return fitPlane(points.map(({ x, y, z }) => ({ x: x - middle.x, y: y - middle.y, z: z - middle.z })));
}

type SpacePoint = PlanePoint & { readonly z: number };

/** Points about their middle, so that the plane goes through zero. */
function fitPlane(points: readonly SpacePoint[]): FittedSlope {
  const sum = (of: (point: SpacePoint) => number): number => points.reduce((total, point) => total + of(point), 0);
  const [xx, xy, yy] = [sum(({ x }) => x * x), sum(({ x, y }) => x * y), sum(({ y }) => y * y)];
  const [xz, yz] = [sum(({ x, z }) => x * z), sum(({ y, z }) => y * z)];
  const determinant = xx * yy - xy * xy;
  // The determinant is the product of the squared spreads along and across.
  if (!(determinant > (LEAST_SPREAD * (xx + yy)) ** 2)) return none('The heights lie along one line only.');
  const east = (xz * yy - yz * xy) / determinant;
  const north = (yz * xx - xz * xy) / determinant;
  const left = sum(({ x, y, z }) => (z - east * x - north * y) ** 2);
  return {
    kind: 'slope',
    slopeDeg: degreesOf(Math.atan(Math.hypot(east, north))),
    downhillDeg: (degreesOf(Math.atan2(-east, -north)) + 360) % 360,
    residualM: Math.sqrt(left / points.length),
    samples: points.length,
  };
}

function none(why: string): FittedSlope {
  return { kind: 'none', why };
}

function mean(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

function degreesOf(radians: number): number {
  return (radians * 180) / Math.PI;
}
