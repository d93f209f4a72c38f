/** Kinds of distances that TSPLIB 95 defines (Reinelt, 1995, section 2), between points given by two numbers. */
export const DISTANCE_KINDS = ['EUC_2D', 'CEIL_2D', 'ATT', 'GEO', 'EXACT_2D'] as const;
export type DistanceKind = (typeof DISTANCE_KINDS)[number];
export type Point = readonly [number, number];

/** Row-major distances between all points. EXACT_2D, the unrounded length, is ours. */
export function distancesBetween(points: readonly Point[], kind: DistanceKind): Float64Array {
  const width = points.length;
  const distances = new Float64Array(width * width);
  points.forEach((from, i) => {
    points.forEach((to, j) => {
      distances[i * width + j] = i === j ? 0 : distance(from, to, kind);
    });
  });
  return distances;
}

function distance(from: Point, to: Point, kind: DistanceKind): number {
  if (kind === 'GEO') return geographic(from, to);
  const length = Math.hypot(from[0] - to[0], from[1] - to[1]);
  switch (kind) {
    case 'EUC_2D':
      return Math.round(length);
    case 'CEIL_2D':
      return Math.ceil(length);
    case 'ATT':
      return Math.ceil(length / Math.sqrt(10));
    case 'EXACT_2D':
      return length;
  }
}

/** TSPLIB's own value of pi and its radius of the earth, km. */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: the standard says this value, and its stored optima need it.
const PI = 3.141592;
const RADIUS_KM = 6378.388;

function geographic(from: Point, to: Point): number {
  const [fromLat, fromLon] = [radians(from[0]), radians(from[1])];
  const [toLat, toLon] = [radians(to[0]), radians(to[1])];
  const a = Math.cos(fromLon - toLon);
  const b = Math.cos(fromLat - toLat);
  const c = Math.cos(fromLat + toLat);
  return Math.trunc(RADIUS_KM * Math.acos(0.5 * ((1 + a) * b - (1 - a) * c)) + 1);
}

/** Degrees and minutes written as DDD.MM. */
function radians(value: number): number {
  const degrees = Math.trunc(value);
  return (PI * (degrees + (5 * (value - degrees)) / 3)) / 180;
}
