import type { DrawingPoint } from './matrix.ts';

/**
 * Degrees of an arc that one chord replaces. An inscribed polygon with steps of s radians loses s^2 / 6 of the circle's area
 * (the series of sin s / s): 0.005 % at one degree.
 */
const STEP = Math.PI / 180;
const FULL_TURN = 2 * Math.PI;
/** Sides of a whole circle or ellipse, whose corners are moved out a little so that its area stays the same. */
const SIDES = 120;
/** More points than this are no outline. */
export const MOST_POINTS = 300_000;
/** Chords for each piece of a spline between two knots; one that turns by a right angle loses 0.003 % of its area. */
const STEPS_PER_SPAN = 100;
const MOST_DEGREE = 12;

export type Arc = {
  readonly centre: DrawingPoint;
  /** From the centre to the point at angle 0, and to that at a quarter turn. */
  readonly major: DrawingPoint;
  readonly minor: DrawingPoint;
  /** Radians. */
  readonly from: number;
  readonly sweep: number;
};

/** Points along an arc of a circle or ellipse, both ends included. */
export function flattenArc({ centre, major, minor, from, sweep }: Arc): readonly DrawingPoint[] {
  const steps = Math.max(1, Math.ceil(Math.abs(sweep) / STEP - 1e-9));
  return Array.from({ length: steps + 1 }, (_, step): DrawingPoint => {
    const angle = from + (sweep * step) / steps;
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    return [centre[0] + cosine * major[0] + sine * minor[0], centre[1] + cosine * major[1] + sine * minor[1]];
  });
}

/**
 * A whole circle or ellipse as a polygon of the same area: n corners at sqrt(a / sin a) of the radius, a = 2 pi / n. At 120
 * sides it lies 0.02 % of the radius outside at the corners and 0.02 % inside between them.
 */
export function flattenWhole({
  centre,
  major,
  minor,
}: Pick<Arc, 'centre' | 'major' | 'minor'>): readonly DrawingPoint[] {
  return WHOLE.map(([cosine, sine]): DrawingPoint => {
    return [centre[0] + cosine * major[0] + sine * minor[0], centre[1] + cosine * major[1] + sine * minor[1]];
  });
}

/** The corners of that polygon for a circle of radius 1 round the origin. */
const WHOLE: readonly DrawingPoint[] = Array.from({ length: SIDES }, (_, side) => {
  const angle = FULL_TURN / SIDES;
  const scale = Math.sqrt(angle / Math.sin(angle));
  return [scale * Math.cos(side * angle), scale * Math.sin(side * angle)];
});

/** The anticlockwise turn from one angle to another, in (0, 2 pi]; radians. */
export function sweepBetween(from: number, to: number): number {
  const turn = (((to - from) % FULL_TURN) + FULL_TURN) % FULL_TURN;
  return turn < 1e-9 ? FULL_TURN : turn;
}

/**
 * Points of a bulge between two corners, both left out. A bulge is the tangent of a quarter of the arc's angle, positive
 * where the arc runs anticlockwise (DXF reference, group code 42).
 */
export function flattenBulge(from: DrawingPoint, to: DrawingPoint, bulge: number): readonly DrawingPoint[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (bulge === 0 || (dx === 0 && dy === 0)) return [];
  const lean = (1 - bulge * bulge) / (4 * bulge);
  const centre: DrawingPoint = [(from[0] + to[0]) / 2 - dy * lean, (from[1] + to[1]) / 2 + dx * lean];
  const major: DrawingPoint = [from[0] - centre[0], from[1] - centre[1]];
  const minor: DrawingPoint = [-major[1], major[0]];
  return flattenArc({ centre, major, minor, from: 0, sweep: 4 * Math.atan(bulge) }).slice(1, -1);
}

export type Spline = {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly DrawingPoint[];
  /** One for each point; empty where all are alike. */
  readonly weights: readonly number[];
};

/** Points along a B-spline; null where its knots do not fit its control points, or where it has thousands of them. Evaluated by de Boor's algorithm (1972). */
export function flattenSpline(spline: Spline): readonly DrawingPoint[] | null {
  const { degree, knots, points } = spline;
  const isRising = knots.every((knot, index) => index === 0 || knot >= (knots[index - 1] ?? knot));
  const fits = knots.length === points.length + degree + 1 && points.length > degree;
  const isReadable = Number.isInteger(degree) && degree >= 1 && degree <= MOST_DEGREE;
  if (!isReadable || !fits || !isRising || points.length * STEPS_PER_SPAN > MOST_POINTS) return null;
  const found: DrawingPoint[] = [];
  for (let span = degree; span < points.length; span += 1) {
    const [low, high] = [knots[span] ?? 0, knots[span + 1] ?? 0];
    if (high <= low) continue;
    for (let step = found.length === 0 ? 0 : 1; step <= STEPS_PER_SPAN; step += 1) {
      found.push(pointAt(spline, span, low + ((high - low) * step) / STEPS_PER_SPAN));
    }
  }
  return found.length > 1 ? found : null;
}

/** The point for a parameter between the knots `span` and `span + 1`. */
function pointAt({ degree, knots, points, weights }: Spline, span: number, parameter: number): DrawingPoint {
  const raised = Array.from({ length: degree + 1 }, (_, offset) => {
    const index = span - degree + offset;
    const [x, y] = points[index] ?? [0, 0];
    const weight = weights[index] ?? 1;
    return [x * weight, y * weight, weight] as const;
  });
  for (let level = 1; level <= degree; level += 1) {
    for (let offset = degree; offset >= level; offset -= 1) {
      const index = span - degree + offset;
      const [low, high] = [knots[index] ?? 0, knots[index + degree - level + 1] ?? 0];
      const share = (parameter - low) / (high - low);
      const [left, right] = [raised[offset - 1] ?? [0, 0, 1], raised[offset] ?? [0, 0, 1]];
      raised[offset] = [mix(left[0], right[0], share), mix(left[1], right[1], share), mix(left[2], right[2], share)];
    }
  }
  const [x, y, weight] = raised[degree] ?? [0, 0, 1];
  return [x / weight, y / weight];
}

function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}
