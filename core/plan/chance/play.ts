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
  /** [load] whether it ran out before it was to be filled again. */
  readonly ranOut: Uint8Array;
};

/** What playing needs to know beside the day itself. */
export type PlayRules = {
  readonly hours: ReadonlyMap<string, OpenHours>;
  /** Time that a refill takes which nobody planned: to the rig, fill, back. seconds */
  readonly extraRefillSec: number;
};

/** What is in a compartment, how far it is filled each time, and which load that is. gal or lb */
type Level = { amount: number; readonly mark: number; readonly load: number };

/** A day made ready to be played many times: which load is in each compartment, and what it holds to begin with. */
export class DayPlay {
  private readonly day: PlanDay;
  private readonly rules: PlayRules;
  /** Numbers of loads by compartment and time of filling. */
  private readonly loadAt: ReadonlyMap<string, number>;
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
      ranOut: new Uint8Array(this.loads),
    };
  }

  /**
   * Plays the day through with the factors of one day. What is done follows the plan's order; a wait lasts to the time of day that the
   * plan waits for; the second person's work goes on beside the first one's. Compartments are filled up to the plan's mark each time; one that
   * runs out is filled at once, to its mark, at the cost of a refill.
   */
  play(factors: DayFactors, into: Played): void {
    const levels = new Map<string, Level>();
    into.missed.fill(0);
    into.ranOut.fill(0);
    let first = this.day.startSec;
    let second = first;
    let home = first;
    let stop = 0;
    for (const each of this.day.activities) {
      const planned = each.endSec - each.startSec;
      if (each.kind === 'treat') {
        const extra = this.draw(each, factors.used, levels, into) * this.rules.extraRefillSec;
        const took = planned * factors.treat() + extra;
        if (each.person === 2) second += took;
        else first += took;
        continue;
      }
      const both = Math.max(first, second);
      first = both + this.duration(each, both, planned, factors);
      if (each.kind === 'drive') home = first;
      if (each.kind === 'set-up') this.arrive(stop++, both, into);
      if (each.kind === 'morning' || each.kind === 'refill' || each.kind === 'pour') this.fill(each, levels);
      second = first;
    }
    into.homeSec = home;
    into.endSec = Math.max(first, second);
  }

  private duration(each: PlanActivity, nowSec: number, planned: number, factors: DayFactors): number {
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
  private fill(
    each: Extract<PlanActivity, { readonly kind: 'morning' | 'refill' | 'pour' }>,
    levels: Map<string, Level>,
  ): void {
    for (const { compartmentId } of each.fills) {
      const load = this.loadAt.get(loadKey(compartmentId, each.startSec)) ?? -1;
      const known = this.day.loads[load];
      if (known === undefined) continue;
      const mark = known.beforeGal + known.volumeGal + known.beforeLb + known.weightLb;
      levels.set(compartmentId, { amount: mark, mark, load });
    }
  }

  /** Takes what the work uses out of its compartments. Returns how often one of them ran out. */
  private draw(
    each: Extract<PlanActivity, { readonly kind: 'treat' }>,
    used: FactorOfDay,
    levels: Map<string, Level>,
    into: Played,
  ): number {
    let times = 0;
    const factor = used();
    for (const draw of each.draws) {
      const level = levels.get(draw.compartmentId);
      if (level === undefined) continue;
      level.amount -= (draw.volumeGal + draw.weightLb) * factor;
      if (level.amount >= -DUST) continue;
      into.ranOut[level.load] = 1;
      const missing = -level.amount;
      const refills = level.mark > 0 ? Math.ceil(missing / level.mark) : 1;
      times += refills;
      level.amount += refills * level.mark;
    }
    return times;
  }
}

/** Amounts are kept in hundredths; less than a tenth of that is nothing. gal or lb */
const DUST = 0.001;

function loadKey(compartmentId: string, startSec: number): string {
  return `${compartmentId} ${startSec}`;
}
