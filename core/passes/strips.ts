import { groundUnder, type Interval, type LaneGround, type Lanes, lanesOver } from './lanes.ts';
import type { Sides } from './sides.ts';
import type { Gauge } from './types.ts';

/** A straight swath in a frame: its lane and where it begins and ends along it, metres. */
export type Strip = { readonly lane: number; readonly from: number; readonly to: number };
export type Strips = {
  readonly lanes: Lanes;
  readonly strips: readonly Strip[];
  readonly lengthM: number;
  /** Length of lanes with ground to treat where the swath does not fit. */
  readonly lostM: number;
};

/** Shorter swaths than this share of the width are left to the hand. */
const LEAST_LENGTH_SHARE = 0.1;
/** What a swath shares with the trim pass at its ends, metres; along its sides it is the overlap of the head. */
const END_M = 0.01;
/** Gaps shorter than this many widths are driven through without shutting off. */
const JOIN_SHARE = 0.5;

/** Ground in a frame: where lanes are laid, what of it is untreated, and all on which a swath may lie. */
export type Field = { readonly rest: Sides; readonly bare: Sides; readonly ground: Sides };

/**
 * Straight swaths in lanes over `rest`, each from end to end of what is `bare` under its lane, and only where the whole width
 * lies on `ground`: a swath never treats ground outside.
 */
export function stripsOver({ rest, bare, ground }: Field, gauge: Gauge): Strips {
  const lanes = lanesOver(rest, gauge.swathM, gauge.overlapM);
  const wanted = groundUnder(lanes, bare);
  const free = groundUnder(lanes, ground);
  const strips: Strip[] = [];
  let lengthM = 0;
  let wantedM = 0;
  let servedM = 0;
  for (let lane = 0; lane < lanes.count; lane += 1) {
    const pieces = wanted[lane]?.any ?? [];
    wantedM += lengthOf(pieces);
    const served = serve(pieces, free[lane], gauge.swathM);
    servedM += served.wantedM;
    for (const [from, to] of served.intervals) {
      strips.push({ lane, from, to });
      lengthM += to - from;
    }
  }
  return { lanes, strips, lengthM, lostM: wantedM - servedM };
}

const lengthOf = (intervals: readonly Interval[]): number => intervals.reduce((sum, [from, to]) => sum + to - from, 0);

function serve(
  wanted: readonly Interval[],
  free: LaneGround | undefined,
  widthM: number,
): { readonly intervals: readonly Interval[]; readonly wantedM: number } {
  const intervals: Interval[] = [];
  let wantedM = 0;
  for (const [low, high] of free?.full ?? []) {
    let open: [number, number] | null = null;
    for (const [from, to] of wanted) {
      const start = Math.max(low, from - END_M);
      const end = Math.min(high, to + END_M);
      if (!(end - start > LEAST_LENGTH_SHARE * widthM)) continue;
      wantedM += Math.min(high, to) - Math.max(low, from);
      if (open !== null && start - open[1] < JOIN_SHARE * widthM) open[1] = end;
      else {
        open = [start, end];
        intervals.push(open);
      }
    }
  }
  return { intervals, wantedM };
}
