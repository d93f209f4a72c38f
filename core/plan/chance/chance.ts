import { createRandom } from '../../base/index.ts';
import type { Spread } from '../../book/index.ts';
import type { PlanDay } from '../result/index.ts';
import { type FactorOfDay, factorsOf } from './factor.ts';
import { type DayFactors, DayPlay, type PlayRules } from './play.ts';

/** How often a day is played unless told otherwise: a share is then known to one point in a hundred (two deviations: 2 points). */
const PLAYED = 2500;

export type ChanceWish = PlayRules & {
  readonly spread: Spread;
  /** End of the shift, without overtime. seconds after midnight */
  readonly shiftEndSec: number;
  readonly seed: number;
  readonly played?: number;
};

/** Times of day that so many of 100 days do not pass. */
export type Range = { readonly sec10: number; readonly sec50: number; readonly sec90: number };

export type StopChance = {
  readonly number: number;
  readonly propertyId: string;
  readonly arrive: Range;
  /** Share of days on which the rig comes when the lawn has closed. */
  readonly missedShare: number;
};

export type LoadChance = {
  readonly number: number;
  readonly compartmentId: string;
  /** Share of days on which it runs out at a stop before the one where its refill is planned: that refill is then made there. */
  readonly earlyShare: number;
  /** Share of days on which it runs out where the plan has no refill of it any more, so that it takes one more. */
  readonly runsOutShare: number;
};

/** How sure a day is. */
export type DayChance = {
  readonly played: number;
  readonly home: Range;
  /** End of the evening work. */
  readonly end: Range;
  /** Share of days on which the evening work is done by the end of the shift. */
  readonly inShiftShare: number;
  /** Share of days on which something runs out at a stop before the one where its refill is planned. */
  readonly earlyShare: number;
  /** Share of days that take a refill more than planned. */
  readonly runsOutShare: number;
  /** Share of days on which some lawn has closed before the rig is there. */
  readonly missedShare: number;
  readonly stops: readonly StopChance[];
  readonly loads: readonly LoadChance[];
};

/**
 * How sure a day is: it is played many times with times and amounts that go from the plan's as the spread says (see `factorsOf`).
 * The same wish gives the same figures.
 *
 * Drives have the spread of drives; setting up, packing up, changing heads, refills and pours that of set-ups; treating its own; amounts
 * that of use. Morning work, breaks and the evening work last as planned.
 */
export function dayChance(day: PlanDay, wish: ChanceWish): DayChance {
  const { spread, shiftEndSec, played = PLAYED } = wish;
  const random = createRandom(wish.seed);
  const draw = {
    drive: factorsOf(spread.driveMean, spread.drive, spread.inCommon),
    setUp: factorsOf(spread.setUpMean, spread.setUp, spread.inCommon),
    treat: factorsOf(spread.treatMean, spread.treat, spread.inCommon),
    used: factorsOf(spread.usedMean, spread.used, spread.inCommon),
  };
  const ofDay = (): DayFactors => {
    const each = (kind: keyof typeof draw): FactorOfDay => draw[kind](random);
    return { drive: each('drive'), setUp: each('setUp'), treat: each('treat'), used: each('used') };
  };
  const play = new DayPlay(day, wish);
  const one = play.empty();
  const home = new Float64Array(played);
  const end = new Float64Array(played);
  const arrive = Array.from({ length: play.stops }, () => new Float64Array(played));
  const missed = new Int32Array(play.stops);
  const ranOut = new Int32Array(play.loads);
  const early = new Int32Array(play.loads);
  const days = { inShift: 0, early: 0, ranOut: 0, missed: 0 };
  for (let round = 0; round < played; round += 1) {
    play.play(ofDay(), one);
    home[round] = one.homeSec;
    end[round] = one.endSec;
    if (one.endSec <= shiftEndSec + SECOND) days.inShift += 1;
    for (let stop = 0; stop < play.stops; stop += 1) {
      (arrive[stop] as Float64Array)[round] = one.arriveSec[stop] as number;
      missed[stop] = (missed[stop] as number) + (one.missed[stop] as number);
    }
    for (let load = 0; load < play.loads; load += 1) {
      early[load] = (early[load] as number) + (one.early[load] as number);
      ranOut[load] = (ranOut[load] as number) + (one.ranOut[load] as number);
    }
    if (one.missed.includes(1)) days.missed += 1;
    if (one.early.includes(1)) days.early += 1;
    if (one.extraRefills > 0) days.ranOut += 1;
  }
  return {
    played,
    home: rangeOf(home),
    end: rangeOf(end),
    inShiftShare: days.inShift / played,
    earlyShare: days.early / played,
    runsOutShare: days.ranOut / played,
    missedShare: days.missed / played,
    stops: day.stops.map(({ number, propertyId }, stop) => ({
      number,
      propertyId,
      arrive: rangeOf(arrive[stop] as Float64Array),
      missedShare: (missed[stop] as number) / played,
    })),
    loads: day.loads.map(({ number, compartmentId }, load) => ({
      number,
      compartmentId,
      earlyShare: (early[load] as number) / played,
      runsOutShare: (ranOut[load] as number) / played,
    })),
  };
}

/** A plan that uses the shift to its last second is in the shift. */
const SECOND = 1;

/** The least values that 10, 50 and 90 of 100 do not pass. Sorts them. */
function rangeOf(values: Float64Array): Range {
  values.sort();
  const at = (share: number): number => values[Math.max(0, Math.ceil(share * values.length) - 1)] ?? 0;
  return { sec10: at(0.1), sec50: at(0.5), sec90: at(0.9) };
}
