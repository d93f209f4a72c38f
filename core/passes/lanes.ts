import type { Sides } from './sides.ts';

/** Parallel lanes of one width along the first axis of a frame; lane j has its middle at firstM + j stepM. */
export type Lanes = {
  readonly count: number;
  readonly firstM: number;
  readonly stepM: number;
  readonly widthM: number;
};
export type Interval = readonly [from: number, to: number];

/** Sides that reach less than this into a lane do not count, metres: rounding along an edge must not block it. */
const TOUCH_M = 0.001;

/** The fewest equal lanes over the whole height of some ground that share at least `overlapM`, flush with both ends. */
export function lanesOver(sides: Sides, widthM: number, overlapM: number): Lanes {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let at = 1; at < sides.length; at += 2) {
    const y = sides[at] ?? 0;
    if (y < low) low = y;
    if (y > high) high = y;
  }
  const beyond = high - low - widthM;
  if (!(beyond > TOUCH_M)) return { count: 1, firstM: (low + high) / 2, stepM: widthM - overlapM, widthM };
  const count = Math.ceil((beyond - TOUCH_M) / (widthM - overlapM)) + 1;
  return { count, firstM: low + widthM / 2, stepM: beyond / (count - 1), widthM };
}

/** Per lane, the stretches where the whole width lies on the ground (`full`) and where any of it does (`any`). */
export type LaneGround = { readonly full: readonly Interval[]; readonly any: readonly Interval[] };

/**
 * How ground lies under lanes. In each lane the stretches that sides of the ground occupy are joined; the gaps between them
 * lie wholly inside or wholly outside, which the crossings of the lane's middle line tell by their parity.
 */
export function groundUnder(lanes: Lanes, sides: Sides): readonly LaneGround[] {
  const blocked: [number, number][][] = Array.from({ length: lanes.count }, () => []);
  const crossings: number[][] = Array.from({ length: lanes.count }, () => []);
  for (let at = 0; at < sides.length; at += 4) {
    enterSide(lanes, sides[at] ?? 0, sides[at + 1] ?? 0, sides[at + 2] ?? 0, sides[at + 3] ?? 0, blocked, crossings);
  }
  return blocked.map((each, lane) => readLane(joinIntervals(each), crossings[lane] ?? []));
}

function enterSide(
  lanes: Lanes,
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  blocked: [number, number][][],
  crossings: number[][],
): void {
  const low = Math.min(fromY, toY);
  const high = Math.max(fromY, toY);
  const reach = lanes.widthM / 2 - TOUCH_M;
  const first = Math.max(0, Math.ceil((low - reach - lanes.firstM) / lanes.stepM));
  const last = Math.min(lanes.count - 1, Math.floor((high + reach - lanes.firstM) / lanes.stepM));
  const lean = toY === fromY ? 0 : (toX - fromX) / (toY - fromY);
  const xAt = (y: number): number => (y === toY ? toX : fromX + (y - fromY) * lean);
  for (let lane = first; lane <= last; lane += 1) {
    const middle = lanes.firstM + lane * lanes.stepM;
    const isFlat = toY === fromY;
    const one = isFlat ? fromX : xAt(Math.max(low, middle - reach));
    const other = isFlat ? toX : xAt(Math.min(high, middle + reach));
    blocked[lane]?.push(one < other ? [one, other] : [other, one]);
    if (fromY > middle !== toY > middle) crossings[lane]?.push(xAt(middle));
  }
}

/** Intervals put in order; those that meet made one. */
function joinIntervals(intervals: [number, number][]): readonly Interval[] {
  intervals.sort((left, right) => left[0] - right[0]);
  const joined: [number, number][] = [];
  for (const each of intervals) {
    const last = joined[joined.length - 1];
    if (last !== undefined && each[0] <= last[1]) last[1] = Math.max(last[1], each[1]);
    else joined.push([each[0], each[1]]);
  }
  return joined;
}

function readLane(blocked: readonly Interval[], crossings: number[]): LaneGround {
  crossings.sort((left, right) => left - right);
  const full: Interval[] = [];
  const any: [number, number][] = [];
  let passed = 0;
  let isInside = false;
  for (const [index, [from, to]] of blocked.entries()) {
    const before = blocked[index - 1];
    if (isInside && before !== undefined) full.push([before[1], from]);
    const last = any[any.length - 1];
    if (isInside && last !== undefined) last[1] = to;
    else any.push([from, to]);
    while (passed < crossings.length && (crossings[passed] ?? 0) <= to) passed += 1;
    isInside = passed % 2 === 1;
  }
  return { full, any };
}
