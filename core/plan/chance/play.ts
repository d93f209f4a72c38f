import type { PlanActivity, PlanDay } from '../result/index.ts';
import type { FactorOfDay } from './factor.ts';

/** Between which times of day a visit may begin. seconds after midnight */
export type OpenHours = { readonly openSec: number; readonly closeSec: number };

/** The factors of one day, by kind. */
export type DayFactors = {
  readonly drive: FactorOfDay;
  readonly setUp: FactorOfDay;
  readonly treat: FactorOfDay;
  readonly used: FactorOfDay;
};

/** What one played day came to. */
export type Played = {
  homeSec: number;
  endSec: number;
  /** [stop] when the rig drove up, and whether it was too late to begin. */
  readonly arriveSec: Float64Array;
  readonly missed: Uint8Array;
  /** [load] whether it ran out at a stop before the one where its refill is planned. */
  readonly early: Uint8Array;
  /** [load] whether it ran out where the plan has no refill of it any more; and how many refills that took. */
  readonly ranOut: Uint8Array;
  extraRefills: number;
};

/** What playing needs to know beside the day itself. */
export type PlayRules = {
  readonly hours: ReadonlyMap<string, OpenHours>;
  /** Time that a refill takes which nobody planned: to the rig, fill, back. seconds */
  readonly extraRefillSec: number;
};

/** What is in a compartment, how far it is filled each time, and which load that is. gal or lb */
type Level = { amount: number; readonly mark: number; readonly load: number };

type Levels = Map<string, Level>;

/** A day made ready to be played many times: which load is in each compartment, and what it holds to begin with. */
export class DayPlay {
  private readonly day: PlanDay;
  private readonly rules: PlayRules;
  /** Numbers of loads by compartment and time of filling. */
  private readonly loadAt: ReadonlyMap<string, number>;
  /** Refills that were made before their time, by the number of their activity. */
  private readonly done = new Set<number>();
  readonly stops: number;
  readonly loads: number;

  constructor(day: PlanDay, rules: PlayRules) {
    this.day = day;
    this.rules = rules;
    this.stops = day.stops.length;
    this.loads = day.loads.length;
    this.loadAt = new Map(day.loads.map((load, index) => [loadKey(load.compartmentId, load.startSec), index]));
  }

  empty(): Played {
    return {
      homeSec: 0,
      endSec: 0,
      arriveSec: new Float64Array(this.stops),
      missed: new Uint8Array(this.stops),
      early: new Uint8Array(this.loads),
      ranOut: new Uint8Array(this.loads),
      extraRefills: 0,
    };
  }

  /**
   * Plays the day through with the factors of one day. What is done follows the plan's order; a wait lasts to the time of day that the
   * plan waits for; the second person's work goes on beside the first one's. Compartments are filled up to the plan's mark each time. Where one
   * runs out, the next refill of it that the plan has from the rig is made at once, in its place; where the plan has none before the next visit
   * to a fill point, it is one refill more.
   */
  play(factors: DayFactors, into: Played): void {
    const { activities } = this.day;
    const levels: Levels = new Map();
    into.early.fill(0);
    into.missed.fill(0);
    into.ranOut.fill(0);
    into.extraRefills = 0;
    this.done.clear();
    let first = this.day.startSec;
    let second = first;
    let home = first;
    // Waiting, a break and refills on arrival come after it, as in plans.
    let arrived = first;
    let stop = 0;
    for (const [index, each] of activities.entries()) {
      if (each.kind === 'treat') {
        const took = (each.endSec - each.startSec) * factors.treat() + this.draw(index, each, factors, levels, into);
        if (each.person === 2) second += took;
        else first += took;
        continue;
      }
      const both = Math.max(first, second);
      first = both + (this.done.has(index) ? 0 : this.duration(each, both, factors));
      if (each.kind === 'drive') home = first;
      if (each.kind === 'set-up') this.arrive(stop++, arrived, into);
      if (each.kind === 'drive' || each.kind === 'pack-up') arrived = first;
      if (!this.done.has(index)) this.fill(each, levels);
      second = first;
    }
    into.homeSec = home;
    into.endSec = Math.max(first, second);
  }

  private duration(each: PlanActivity, nowSec: number, factors: DayFactors): number {
    const planned = each.endSec - each.startSec;
    switch (each.kind) {
      case 'drive':
        return planned * factors.drive();
      case 'wait':
        return Math.max(0, each.endSec - nowSec);
      case 'set-up':
        return Math.max(0, this.openSec(each.propertyId) - nowSec) + planned * factors.setUp();
      case 'swap-head':
      case 'refill':
      case 'pour':
      case 'pack-up':
        return planned * factors.setUp();
      default:
        return planned;
    }
  }

  private openSec(propertyId: string): number {
    return this.rules.hours.get(propertyId)?.openSec ?? Number.NEGATIVE_INFINITY;
  }

  private arrive(stop: number, nowSec: number, into: Played): void {
    if (stop >= this.stops) return;
    into.arriveSec[stop] = nowSec;
    const close = this.rules.hours.get(this.day.stops[stop]?.propertyId ?? '')?.closeSec;
    if (close !== undefined && nowSec > close) into.missed[stop] = 1;
  }

  /** Fills compartments to the plan's mark: what the plan has in it before, and what goes in. */
  private fill(each: PlanActivity, levels: Levels): void {
    if (each.kind !== 'morning' && each.kind !== 'refill' && each.kind !== 'pour') return;
    for (const { compartmentId } of each.fills) {
      const load = this.loadAt.get(loadKey(compartmentId, each.startSec)) ?? -1;
      const known = this.day.loads[load];
      if (known === undefined) continue;
      const mark = known.beforeGal + known.volumeGal + known.beforeLb + known.weightLb;
      levels.set(compartmentId, { amount: mark, mark, load });
    }
  }

  /** The next refill of the compartment from the rig that was not made yet, before the next visit to a fill point; -1 where there is none. */
  private refillToCome(index: number, compartmentId: string): number {
    const { activities } = this.day;
    for (let next = index + 1; next < activities.length; next += 1) {
      const each = activities[next];
      if (each?.kind !== 'refill' || this.done.has(next)) continue;
      if (each.fillPointId !== '') return -1;
      if (each.fills.some((fill) => fill.compartmentId === compartmentId)) return next;
    }
    return -1;
  }

  /** Whether the rig leaves the stop between two activities. */
  private leavesBetween(from: number, to: number): boolean {
    return this.day.activities.slice(from, to).some((each) => each.kind === 'drive');
  }

  /** Takes what the work uses out of its compartments. Returns the time of the refills that it takes. seconds */
  private draw(
    index: number,
    each: Extract<PlanActivity, { readonly kind: 'treat' }>,
    factors: DayFactors,
    levels: Levels,
    into: Played,
  ): number {
    let spent = 0;
    const factor = factors.used();
    for (const { compartmentId, volumeGal, weightLb } of each.draws) {
      const level = levels.get(compartmentId);
      if (level === undefined) continue;
      level.amount -= (volumeGal + weightLb) * factor;
      spent += this.makeGood(index, compartmentId, levels, factors, into);
    }
    return spent;
  }

  /** Refills a compartment until it is not below empty any more. Returns the time that takes. seconds */
  private makeGood(index: number, compartmentId: string, levels: Levels, factors: DayFactors, into: Played): number {
    let spent = 0;
    for (;;) {
      const level = levels.get(compartmentId);
      if (level === undefined || level.amount >= -DUST) return spent;
      const next = this.refillToCome(index, compartmentId);
      const refill = this.day.activities[next];
      if (refill === undefined) {
        const refills = level.mark > 0 ? Math.ceil(-level.amount / level.mark) : 1;
        level.amount += refills * level.mark;
        into.ranOut[level.load] = 1;
        into.extraRefills += refills;
        return spent + refills * this.rules.extraRefillSec;
      }
      if (this.leavesBetween(index, next)) into.early[level.load] = 1;
      spent += (refill.endSec - refill.startSec) * factors.setUp();
      this.done.add(next);
      const missing = level.amount;
      this.fill(refill, levels);
      const filled = levels.get(compartmentId);
      if (filled !== undefined) filled.amount += missing;
    }
  }
}

/** Amounts are kept in hundredths; less than a tenth of that is nothing. gal or lb */
const DUST = 0.001;

function loadKey(compartmentId: string, number: number): string {
  return `${compartmentId} ${number}`;
}
