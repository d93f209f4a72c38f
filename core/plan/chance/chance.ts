import { createRandom } from '../../base/index.ts';
import type { Spread } from '../../book/index.ts';
import type { PlanDay } from '../result/index.ts';
import { type FactorOfDay, factorsOf } from './factor.ts';
import { type DayFactors, DayPlay, type Played, type PlayRules } from './play.ts';

/** How often a day is played unless told otherwise: a share is then known to one point in a hundred (two deviations: 2 points). */
const PLAYED = 2500;

/** What a day is played with; `played` is how many times, 2,500 unless told. */
export type ChanceWish = PlayRules & {
  readonly spread: Spread;
  /** End of the shift, without overtime. seconds after midnight */
  readonly shiftEndSec: number;
  readonly seed: number;
  readonly played?: number;
};

/** Times of day that so many of 100 days do not pass. */
export type Range = { readonly sec10: number; readonly sec50: number; readonly sec90: number };

/** When a rig comes to a stop over all the days that were played. */
export type StopChance = {
  readonly number: number;
  readonly propertyId: string;
  readonly arrive: Range;
  /** Share of days on which the rig comes when the lawn has closed. */
  readonly missedShare: number;
};

/** How sure a load is to last as planned, as shares of the days that were played. */
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
  const chances = new Chances(day, wish);
  chances.play(chances.left);
  return chances.found();
}

/** The same, a few days at a time. */
export class Chances {
  /** Days still to be played. */
  left: number;
  private readonly day: PlanDay;
  private readonly wish: ChanceWish;
  private readonly played: number;
  private readonly ofDay: () => DayFactors;
  private readonly days: DayPlay;
  private readonly one: Played;
  private readonly home: Float64Array;
  private readonly end: Float64Array;
  private readonly arrive: readonly Float64Array[];
  private readonly missed: Int32Array;
  private readonly ranOut: Int32Array;
  private readonly early: Int32Array;
  private readonly counts = { inShift: 0, early: 0, ranOut: 0, missed: 0 };

  constructor(day: PlanDay, wish: ChanceWish) {
    const { played = PLAYED } = wish;
    this.day = day;
    this.wish = wish;
    this.played = played;
    this.left = played;
    this.ofDay = factorsOfDays(wish);
    this.days = new DayPlay(day, wish);
    this.one = this.days.empty();
    this.home = new Float64Array(played);
    this.end = new Float64Array(played);
    this.arrive = Array.from({ length: this.days.stops }, () => new Float64Array(played));
    this.missed = new Int32Array(this.days.stops);
    this.ranOut = new Int32Array(this.days.loads);
    this.early = new Int32Array(this.days.loads);
  }

  /** Plays so many days more, or as many as are left. */
  play(count: number): void {
    const { counts, days, one } = this;
    const until = Math.max(0, this.left - count);
    for (; this.left > until; this.left -= 1) {
      const round = this.played - this.left;
      days.play(this.ofDay(), one);
      this.home[round] = one.homeSec;
      this.end[round] = one.endSec;
      for (const [stop, arrivals] of this.arrive.entries()) arrivals[round] = one.arriveSec[stop] as number;
      addTo(this.missed, one.missed);
      addTo(this.early, one.early);
      addTo(this.ranOut, one.ranOut);
      if (one.endSec <= this.wish.shiftEndSec + SECOND) counts.inShift += 1;
      if (one.missed.includes(1)) counts.missed += 1;
      if (one.early.includes(1)) counts.early += 1;
      if (one.extraRefills > 0) counts.ranOut += 1;
    }
  }

  /** What came of it, once all days are played. */
  found(): DayChance {
    const { counts, day, played } = this;
    const share = (count: number): number => count / played;
    return {
      played,
      home: rangeOf(this.home),
      end: rangeOf(this.end),
      inShiftShare: share(counts.inShift),
      earlyShare: share(counts.early),
      runsOutShare: share(counts.ranOut),
      missedShare: share(counts.missed),
      stops: day.stops.map(({ number, propertyId }, stop) => ({
        number,
        propertyId,
        arrive: rangeOf(this.arrive[stop] as Float64Array),
        missedShare: share(this.missed[stop] as number),
      })),
      loads: day.loads.map(({ number, compartmentId }, load) => ({
        number,
        compartmentId,
        earlyShare: share(this.early[load] as number),
        runsOutShare: share(this.ranOut[load] as number),
      })),
    };
  }
}

function factorsOfDays({ spread, seed }: ChanceWish): () => DayFactors {
  const random = createRandom(seed);
  const { inCommon } = spread;
  const draw = {
    drive: factorsOf(spread.driveMean, spread.drive, inCommon),
    setUp: factorsOf(spread.setUpMean, spread.setUp, inCommon),
    treat: factorsOf(spread.treatMean, spread.treat, inCommon),
    used: factorsOf(spread.usedMean, spread.used, inCommon),
  };
  const each = (kind: keyof typeof draw): FactorOfDay => draw[kind](random);
  return () => ({ drive: each('drive'), setUp: each('setUp'), treat: each('treat'), used: each('used') });
}

function addTo(sums: Int32Array, flags: Uint8Array): void {
  for (let at = 0; at < sums.length; at += 1) sums[at] = (sums[at] as number) + (flags[at] as number);
}

/** A plan that uses the shift to its last second is in the shift. */
const SECOND = 1;

/** The least values that 10, 50 and 90 of 100 do not pass. Sorts them. */
function rangeOf(values: Float64Array): Range {
  values.sort();
  const at = (share: number): number => values[Math.max(0, Math.ceil(share * values.length) - 1)] ?? 0;
  return { sec10: at(0.1), sec50: at(0.5), sec90: at(0.9) };
}
