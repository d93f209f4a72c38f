/** A point of a drawing, in its units. */
export type DrawingPoint = readonly [x: number, y: number];

/** Takes [x, y] to [a x + c y + e, b x + d y + f]. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const UNMOVED: Matrix = [1, 0, 0, 1, 0, 0];
/** Of an entity that is drawn on the back of the sheet: the x axis of its own plane runs the other way (DXF reference, OCS). */
export const MIRRORED: Matrix = [-1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function combine(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export function applyTo([a, b, c, d, e, f]: Matrix, [x, y]: DrawingPoint): [x: number, y: number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

export function shift(x: number, y: number): Matrix {
  return [1, 0, 0, 1, x, y];
}

export function turnAndScale(degrees: number, scaleX: number, scaleY: number): Matrix {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [cosine * scaleX, sine * scaleX, -sine * scaleY, cosine * scaleY, 0, 0];
}
