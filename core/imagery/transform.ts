/** A point in a flat frame: picture pixels (y down), metres of a local plane (y north), or pixels of the screen. */
export type FlatPoint = { readonly x: number; readonly y: number };

/** The same point in two frames. */
export type PointPair = { readonly from: FlatPoint; readonly to: FlatPoint };

/**
 * A projective map of the plane, row by row:
 * x' = (m[0] x + m[1] y + m[2]) / (m[6] x + m[7] y + m[8]), y' likewise with m[3] to m[5].
 */
export type PlaneMap = readonly [number, number, number, number, number, number, number, number, number];

/** Null where the point lies on or behind the horizon of the map. */
export function mapPoint(map: PlaneMap, { x, y }: FlatPoint): FlatPoint | null {
  const depth = map[6] * x + map[7] * y + map[8];
  if (!(depth > 0)) return null;
  return { x: (map[0] * x + map[1] * y + map[2]) / depth, y: (map[3] * x + map[4] * y + map[5]) / depth };
}

/** First `first`, then `second`. */
export function chainMaps(first: PlaneMap, second: PlaneMap): PlaneMap {
  const cell = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + (second[3 * row + k] ?? 0) * (first[3 * k + column] ?? 0), 0);
  return [cell(0, 0), cell(0, 1), cell(0, 2), cell(1, 0), cell(1, 1), cell(1, 2), cell(2, 0), cell(2, 1), cell(2, 2)];
}

/** Moves points to the middle of their frame and scales them to about one, so that sums of squares lose no digits. */
export function evenFrame(points: readonly FlatPoint[]): { readonly into: PlaneMap; readonly back: PlaneMap } {
  const count = Math.max(1, points.length);
  const x = points.reduce((sum, point) => sum + point.x, 0) / count;
  const y = points.reduce((sum, point) => sum + point.y, 0) / count;
  const spread = Math.sqrt(points.reduce((sum, p) => sum + (p.x - x) ** 2 + (p.y - y) ** 2, 0) / count);
  const scale = spread > 0 ? 1 / spread : 1;
  return {
    into: [scale, 0, -scale * x, 0, scale, -scale * y, 0, 0, 1],
    back: [1 / scale, 0, x, 0, 1 / scale, y, 0, 0, 1],
  };
}
