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

/**
 * Stretches along lanes as pairs of ends in a row. Those of lane j are `count[j]` pairs from pair `first[j]` on; between those of
 * one lane and the next there may be unused room.
 */
export type Stretches = { readonly first: Int32Array; readonly count: Int32Array; readonly ends: Float64Array };
/** Stretches where the whole width of a lane lies on the ground (`full`) and where any of it does (`any`). */
export type LaneGround = { readonly full: Stretches; readonly any: Stretches };

/** The stretches of one lane as intervals. */
export function intervalsIn({ first, count, ends }: Stretches, lane: number): readonly Interval[] {
  return Array.from({ length: count[lane] ?? 0 }, (_, index): Interval => {
    const at = 2 * ((first[lane] as number) + index);
    return [ends[at] as number, ends[at + 1] as number];
  });
}

/**
 * How ground lies under lanes. In each lane the stretches that sides of the ground occupy are joined; the gaps between them
 * lie wholly inside or wholly outside, which the crossings of the lane's middle line tell by their parity.
 */
export const groundUnder = (lanes: Lanes, sides: Sides): LaneGround => laneReader()(lanes, sides);

/** `groundUnder` for many directions: it uses its arrays again, so an answer holds until the next call. */
export function laneReader(): (lanes: Lanes, sides: Sides) => LaneGround {
  const room = new LaneRoom();
  return (lanes, sides) => {
    room.begin(lanes, sides);
    for (let at = 0; at < sides.length; at += 4) {
      enterSide(
        room,
        lanes,
        sides[at] as number,
        sides[at + 1] as number,
        sides[at + 2] as number,
        sides[at + 3] as number,
      );
    }
    for (let lane = 0; lane < lanes.count; lane += 1) readLane(room, lane);
    const { first, full, any, fullCount, anyCount } = room;
    return { full: { first, count: fullCount, ends: full }, any: { first, count: anyCount, ends: any } };
  };
}

/** Arrays in which lanes are read, with room for every side in every lane that it reaches. */
class LaneRoom {
  first = new Int32Array(0);
  blockedCount = new Int32Array(0);
  crossingCount = new Int32Array(0);
  fullCount = new Int32Array(0);
  anyCount = new Int32Array(0);
  blocked = new Float64Array(0);
  crossings = new Float64Array(0);
  full = new Float64Array(0);
  any = new Float64Array(0);

  begin(lanes: Lanes, sides: Sides): void {
    if (this.first.length <= lanes.count) this.growLanes(2 * lanes.count + 1);
    for (const counts of [this.blockedCount, this.crossingCount, this.fullCount, this.anyCount]) counts.fill(0);
    const { first } = this;
    first.fill(0, 0, lanes.count + 1);
    for (let at = 1; at < sides.length; at += 4) {
      const [one, other] = [sides[at] as number, sides[at + 2] as number];
      const last = lastLane(lanes, Math.max(one, other));
      for (let lane = firstLane(lanes, Math.min(one, other)); lane <= last; lane += 1) {
        first[lane + 1] = (first[lane + 1] as number) + 1;
      }
    }
    for (let lane = 0; lane < lanes.count; lane += 1)
      first[lane + 1] = (first[lane + 1] as number) + (first[lane] as number);
    const pairs = first[lanes.count] as number;
    if (this.crossings.length < pairs) this.growPairs(2 * pairs);
  }

  private growLanes(lanes: number): void {
    this.first = new Int32Array(lanes + 1);
    this.blockedCount = new Int32Array(lanes);
    this.crossingCount = new Int32Array(lanes);
    this.fullCount = new Int32Array(lanes);
    this.anyCount = new Int32Array(lanes);
  }

  private growPairs(pairs: number): void {
    this.crossings = new Float64Array(pairs);
    this.blocked = new Float64Array(2 * pairs);
    this.full = new Float64Array(2 * pairs);
    this.any = new Float64Array(2 * pairs);
  }
}

const reachOf = (lanes: Lanes): number => lanes.widthM / 2 - TOUCH_M;
const firstLane = (lanes: Lanes, low: number): number =>
  Math.max(0, Math.ceil((low - reachOf(lanes) - lanes.firstM) / lanes.stepM));
const lastLane = (lanes: Lanes, high: number): number =>
  Math.min(lanes.count - 1, Math.floor((high + reachOf(lanes) - lanes.firstM) / lanes.stepM));

function enterSide(room: LaneRoom, lanes: Lanes, fromX: number, fromY: number, toX: number, toY: number): void {
  const low = Math.min(fromY, toY);
  const high = Math.max(fromY, toY);
  const reach = reachOf(lanes);
  const last = lastLane(lanes, high);
  const isFlat = toY === fromY;
  const lean = isFlat ? 0 : (toX - fromX) / (toY - fromY);
  const xAt = (y: number): number => (y === toY ? toX : fromX + (y - fromY) * lean);
  for (let lane = firstLane(lanes, low); lane <= last; lane += 1) {
    const middle = lanes.firstM + lane * lanes.stepM;
    const one = isFlat ? fromX : xAt(Math.max(low, middle - reach));
    const other = isFlat ? toX : xAt(Math.min(high, middle + reach));
    block(room, lane, Math.min(one, other), Math.max(one, other));
    if (fromY > middle !== toY > middle) {
      const count = room.crossingCount[lane] as number;
      room.crossings[(room.first[lane] as number) + count] = xAt(middle);
      room.crossingCount[lane] = count + 1;
    }
  }
}

/** Enters a stretch; one that meets the last one of its lane, as the sides along an outline do, is joined to it at once. */
function block({ first, blockedCount, blocked }: LaneRoom, lane: number, from: number, to: number): void {
  const count = blockedCount[lane] as number;
  const next = 2 * ((first[lane] as number) + count);
  if (count > 0 && from <= (blocked[next - 1] as number) && to >= (blocked[next - 2] as number)) {
    if (from < (blocked[next - 2] as number)) blocked[next - 2] = from;
    if (to > (blocked[next - 1] as number)) blocked[next - 1] = to;
    return;
  }
  blocked[next] = from;
  blocked[next + 1] = to;
  blockedCount[lane] = count + 1;
}

/** Puts stretches in the order of their beginnings and makes one of those that meet. */
function joinPairs({ first, blockedCount, blocked }: LaneRoom, lane: number): void {
  const start = 2 * (first[lane] as number);
  const end = start + 2 * (blockedCount[lane] as number);
  for (let at = start + 2; at < end; at += 2) {
    const [from, to] = [blocked[at] as number, blocked[at + 1] as number];
    let place = at;
    for (; place > start && (blocked[place - 2] as number) > from; place -= 2) {
      blocked[place] = blocked[place - 2] as number;
      blocked[place + 1] = blocked[place - 1] as number;
    }
    blocked[place] = from;
    blocked[place + 1] = to;
  }
  let kept = start;
  for (let at = start; at < end; at += 2) {
    if (kept > start && (blocked[at] as number) <= (blocked[kept - 1] as number)) {
      blocked[kept - 1] = Math.max(blocked[kept - 1] as number, blocked[at + 1] as number);
      continue;
    }
    blocked[kept] = blocked[at] as number;
    blocked[kept + 1] = blocked[at + 1] as number;
    kept += 2;
  }
  blockedCount[lane] = (kept - start) / 2;
}

function readLane(room: LaneRoom, lane: number): void {
  joinPairs(room, lane);
  const { blocked, crossings, full, any } = room;
  const first = room.first[lane] as number;
  const crossed = first + (room.crossingCount[lane] as number);
  crossings.subarray(first, crossed).sort();
  const end = 2 * (first + (room.blockedCount[lane] as number));
  let passed = first;
  let isInside = false;
  let fullEnd = 2 * first;
  let anyEnd = 2 * first;
  for (let at = 2 * first; at < end; at += 2) {
    const to = blocked[at + 1] as number;
    if (isInside) {
      full[fullEnd] = blocked[at - 1] as number;
      full[fullEnd + 1] = blocked[at] as number;
      fullEnd += 2;
      any[anyEnd - 1] = to;
    } else {
      any[anyEnd] = blocked[at] as number;
      any[anyEnd + 1] = to;
      anyEnd += 2;
    }
    while (passed < crossed && (crossings[passed] as number) <= to) passed += 1;
    isInside = (passed - first) % 2 === 1;
  }
  room.fullCount[lane] = fullEnd / 2 - first;
  room.anyCount[lane] = anyEnd / 2 - first;
}
