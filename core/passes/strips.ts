import { type Lanes, laneReader, lanesOver, type Stretches } from './lanes.ts';
import type { Sides } from './sides.ts';
import type { Gauge } from './types.ts';

/** A straight swath in a frame: its lane and where it begins and ends along it, metres. */
export type Strip = { readonly lane: number; readonly from: number; readonly to: number };
/** Swaths of one direction in sum. */
export type StripSum = {
  readonly lanes: Lanes;
  readonly count: number;
  readonly lengthM: number;
  /** Length of lanes with ground to treat where the swath does not fit. */
  readonly lostM: number;
};
export type Strips = Omit<StripSum, 'count'> & { readonly strips: readonly Strip[] };

/** Shorter swaths than this share of the width are left to the hand. */
const LEAST_LENGTH_SHARE = 0.1;
/** What a swath shares with the trim pass at its ends, metres; along its sides it is the overlap of the head. */
const END_M = 0.01;
/** Gaps shorter than this many widths are driven through without shutting off. */
const JOIN_SHARE = 0.5;

/** Ground in a frame: where lanes are laid, what of it is untreated, and all on which a swath may lie. */
export type Field = { readonly rest: Sides; readonly bare: Sides; readonly ground: Sides };

/** Takes one swath. */
type Take = (lane: number, from: number, to: number) => void;
/**
 * Lays swaths over a field, hands each to `take`, and gives their sum.
 * @param every of so many lanes one is looked at, and counts for all of them
 */
export type StripLayer = (field: Field, gauge: Gauge, take?: Take, every?: number) => StripSum;

/**
 * Straight swaths in lanes over `rest`, each from end to end of what is `bare` under its lane, and only where the whole width
 * lies on `ground`: a swath never treats ground outside.
 */
export function stripLayer(): StripLayer {
  const [readBare, readGround] = [laneReader(), laneReader()];
  return ({ rest, bare, ground }, gauge, take, every = 1) => {
    const lanes = lanesOver(rest, gauge.swathM, gauge.overlapM);
    const read = everyLane(lanes, every);
    const wanted = readBare(read, bare).any;
    const free = readGround(read, ground).full;
    const sum: Sum = { count: 0, lengthM: 0, wantedM: 0, servedM: 0 };
    for (let lane = 0; lane < read.count; lane += 1) serveLane(wanted, free, lane, gauge.swathM, sum, take);
    const times = lanes.count / read.count;
    const lostM = times * (sum.wantedM - sum.servedM);
    return { lanes, count: times * sum.count, lengthM: times * sum.lengthM, lostM };
  };
}

/** The swaths over a field as a list, with their sum. */
export function stripsOver(field: Field, gauge: Gauge, lay: StripLayer = stripLayer()): Strips {
  const strips: Strip[] = [];
  const { lanes, lengthM, lostM } = lay(field, gauge, (lane, from, to) => strips.push({ lane, from, to }));
  return { lanes, strips, lengthM, lostM };
}

/** Of so many lanes one, as far from the first lane as from the last but for one lane. */
function everyLane(lanes: Lanes, every: number): Lanes {
  if (every === 1) return lanes;
  const count = Math.ceil(lanes.count / every);
  const before = Math.floor((lanes.count - 1 - (count - 1) * every) / 2);
  return { ...lanes, count, firstM: lanes.firstM + before * lanes.stepM, stepM: every * lanes.stepM };
}

type Sum = { count: number; lengthM: number; wantedM: number; servedM: number };

function serveLane(wanted: Stretches, free: Stretches, lane: number, widthM: number, sum: Sum, take?: Take): void {
  const begin = 2 * (wanted.first[lane] as number);
  const end = begin + 2 * (wanted.count[lane] as number);
  for (let at = begin; at < end; at += 2) sum.wantedM += (wanted.ends[at + 1] as number) - (wanted.ends[at] as number);
  const close = (from: number, to: number): void => {
    sum.count += 1;
    sum.lengthM += to - from;
    take?.(lane, from, to);
  };
  const freeEnd = 2 * ((free.first[lane] as number) + (free.count[lane] as number));
  for (let gap = 2 * (free.first[lane] as number); gap < freeEnd; gap += 2) {
    const [low, high] = [free.ends[gap] as number, free.ends[gap + 1] as number];
    let openFrom = Number.NaN;
    let openTo = Number.NaN;
    for (let at = begin; at < end; at += 2) {
      const [from, to] = [wanted.ends[at] as number, wanted.ends[at + 1] as number];
      const startM = Math.max(low, from - END_M);
      const stopM = Math.min(high, to + END_M);
      if (!(stopM - startM > LEAST_LENGTH_SHARE * widthM)) continue;
      sum.servedM += Math.min(high, to) - Math.max(low, from);
      if (!(startM - openTo < JOIN_SHARE * widthM)) {
        if (openFrom <= openTo) close(openFrom, openTo);
        openFrom = startM;
      }
      openTo = stopM;
    }
    if (openFrom <= openTo) close(openFrom, openTo);
  }
}
