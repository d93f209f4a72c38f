import { carryingLimits, type Limit, lift, NO_LIMIT, scaleOf, stationLimits } from '../explain/index.ts';
import type { Job, Mode, Problem } from '../problem/index.ts';
import { type Care, RefillPlacer, type RouteFault, type RouteOutcome, type Visit } from '../refills/index.ts';

/** A route placed with as few limits taken away as it needs; 0 where it breaks none. */
export type LooseRoute = { readonly route: RouteOutcome; readonly lifted: number };

/** Beyond this nothing new is learnt. */
const MOST_TRIES = 200;

/**
 * Places the refills of a row of visits, as the search does in the end; where that cannot be, limits are taken away one after the other
 * until it can, each no further than it must. What is broken is then for the judge to say.
 *
 * @returns null where not even that helps
 */
export function placeLoosely(problem: Problem, slot: number, visits: readonly Visit[], care: Care): LooseRoute | null {
  if (visits.length === 0) return { route: { slot, visits, ...NOTHING }, lifted: 0 };
  return new LoosePlacing(problem, slot, visits).place(care);
}

const NOTHING = { activities: [], paidMs: 0, distanceM: 0, cost: 0 } as const;

type Lifted = { readonly limit: Limit; amount: number };

class LoosePlacing {
  /** Cut down to the jobs of the route, in its order, so that copies are cheap. */
  private readonly problem: Problem;
  private readonly slot: number;
  private readonly rig: number;
  private readonly visits: readonly Visit[];
  private readonly own: readonly Visit[];
  private readonly lifted: Lifted[] = [];

  constructor(problem: Problem, slot: number, visits: readonly Visit[]) {
    this.problem = { ...problem, jobs: visits.map((visit) => problem.jobs[visit.job] as Job) };
    this.slot = slot;
    this.rig = problem.slots[slot]?.rig ?? 0;
    this.visits = visits;
    this.own = visits.map(({ mode }, job) => ({ job, mode }));
  }

  place(care: Care): LooseRoute | null {
    let placement = this.placed(care);
    for (let tries = 0; placement.kind === 'impossible' && tries < MOST_TRIES; tries += 1) {
      const next = this.answersTo(placement.fault)
        .map((limits) => limits.filter((limit) => !this.isLifted(limit)))
        .find((limits) => limits.length > 0);
      if (next === undefined) return null;
      for (const limit of next) this.lifted.push({ limit, amount: NO_LIMIT });
      placement = this.placed(care);
    }
    if (placement.kind === 'impossible') return null;
    if (this.mayBeLowered()) {
      // Those that came last are the ones to be kept first.
      for (const each of this.lifted.toReversed()) this.lower(each);
      const final = this.placed(care);
      if (final.kind === 'placed') placement = final;
    }
    const lifted = this.lifted.filter((each) => each.amount > 0).length;
    return { route: { ...placement.outcome, visits: this.visits }, lifted };
  }

  /** A single limit that is there or not was needed: without it being lifted the row could not be placed. */
  private mayBeLowered(): boolean {
    const [first, ...others] = this.lifted;
    if (first === undefined) return false;
    return others.length > 0 || scaleOf(this.problem, this.rig, first.limit, this.own).step > 0;
  }

  private placed(care: Care) {
    return new RefillPlacer(this.loosened()).place(this.slot, this.own, care);
  }

  private loosened(): Problem {
    return this.lifted.reduce(
      (problem, { limit, amount }) => (amount > 0 ? loosen(problem, this.rig, limit, amount) : problem),
      this.problem,
    );
  }

  private isLifted(limit: Limit): boolean {
    const name = JSON.stringify(limit);
    return this.lifted.some((each) => JSON.stringify(each.limit) === name);
  }

  private modes(): readonly Mode[] {
    return this.own.flatMap(({ job, mode }) => this.problem.jobs[job]?.modes[this.rig]?.[mode] ?? []);
  }

  /** Limits that may have to go, group by group: what somebody can talk over comes before what a tank can hold. */
  private answersTo(fault: RouteFault): readonly (readonly Limit[])[] {
    const { rig } = this;
    const customers = this.own.map(({ job }): Limit => ({ kind: 'customer-hours', job }));
    const carrying = carryingLimits(this.problem, rig, this.modes());
    const of = (...kinds: readonly Limit['kind'][]): readonly Limit[] =>
      carrying.filter((each) => kinds.includes(each.kind));
    const hours = stationLimits(this.problem);
    const time: readonly Limit[] = [{ kind: 'time' }];
    const all = [hours, of('supply'), of('payload'), of('bag-places', 'nurse-tank', 'compartment'), time, customers];
    switch (fault.kind) {
      case 'too-long':
        return [time, ...all];
      case 'window-missed':
        return [[{ kind: 'customer-hours', job: fault.visit }], ...all];
      case 'payload':
        return [of('payload'), ...all];
      default:
        return all;
    }
  }

  /** Halves what a limit was moved by until it is the least that will do; hours, days and supplies are there or not. */
  private lower(each: Lifted): void {
    const { step, most } = scaleOf(this.problem, this.rig, each.limit, this.own);
    const fits = (amount: number): boolean => {
      each.amount = amount;
      return this.placed('quick').kind === 'placed';
    };
    if (fits(0)) return;
    if (step === 0) {
      each.amount = NO_LIMIT;
      return;
    }
    let [low, high] = [0, most];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (fits(middle * step)) high = middle;
      else low = middle;
    }
    each.amount = high * step;
  }
}

/** Customers who are reached too late wait for the crew, and weather does not end work; nobody starts before either allows it. */
function loosen(problem: Problem, rig: number, limit: Limit, amount: number): Problem {
  if (limit.kind !== 'customer-hours') return lift(problem, rig, limit, amount);
  const jobs = problem.jobs.map((job, at) => (at === limit.job ? withoutEnd(job) : job));
  return { ...problem, jobs };
}

function withoutEnd({ treatHours, ...job }: Job): Job {
  const opening = treatHours?.map((each) => (each === null ? null : { openMs: each.openMs, words: each.words }));
  return { ...job, closeMs: NO_LIMIT, ...(opening === undefined ? {} : { treatHours: opening }) };
}
