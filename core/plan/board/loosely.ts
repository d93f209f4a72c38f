import { carryingLimits, type Limit, lift, NO_LIMIT, scaleOf, stationLimits } from '../explain/index.ts';
import type { Job, Mode, Problem } from '../problem/index.ts';
import {
  type Care,
  type Placement,
  RefillPlacer,
  type RouteFault,
  type RouteOutcome,
  type Visit,
} from '../refills/index.ts';

/** A route placed with as few limits taken away as it needs; 0 where it breaks none. */
export type LooseRoute = { readonly route: RouteOutcome; readonly lifted: number };

/** Labels kept on a day that breaks its rules anyhow: good refills are enough there, and without the rules the best ones take seconds. */
const BROKEN_BEAM = 12;
/** Beyond this nothing new is learnt. */
const MOST_TRIES = 200;
/** Rows whose limits are remembered. */
const MOST_KNOWN = 200;
const NOTHING = { activities: [], paidMs: 0, distanceM: 0, cost: 0 } as const;

type Lifted = { readonly limit: Limit; amount: number };

/**
 * Places the refills of rows of visits, as the search does in the end; where that cannot be, limits are taken away one after the other
 * until it can, each no further than it must. What is broken is then for the judge to say.
 */
export class LoosePlacer {
  private readonly problem: Problem;
  private readonly placer: RefillPlacer;
  /** What had to be taken away from rows that were placed last. */
  private readonly known = new Map<string, readonly Lifted[]>();

  constructor(problem: Problem) {
    this.problem = problem;
    this.placer = new RefillPlacer(problem);
  }

  /** @returns null where not even that helps */
  place(slot: number, visits: readonly Visit[], care: Care): LooseRoute | null {
    if (visits.length === 0) return { route: { slot, visits, ...NOTHING }, lifted: 0 };
    const name = JSON.stringify([slot, visits.map(({ job, mode }) => [job, mode])]);
    const known = this.known.get(name);
    if (known === undefined) {
      const placement = this.placer.place(slot, visits, care);
      if (placement.kind === 'placed') return { route: placement.outcome, lifted: 0 };
      const placing = new LoosePlacing(this.problem, slot, visits, []);
      const found = placing.loosen(placement.fault, care);
      if (found !== null) this.keep(name, placing.lifted);
      return found;
    }
    return new LoosePlacing(this.problem, slot, visits, known).again(care);
  }

  /** The cost of a row as the search estimates it, without anything taken away; see `RefillPlacer`. */
  estimate(slot: number, visits: readonly Visit[], beam: number): number {
    const jobs = visits.map((visit) => visit.job);
    const modes = visits.map((visit) => visit.mode);
    return this.placer.estimate(slot, jobs, modes, visits.length, beam);
  }

  private keep(name: string, lifted: readonly Lifted[]): void {
    this.known.set(name, lifted);
    const [oldest] = this.known.keys();
    if (this.known.size > MOST_KNOWN && oldest !== undefined) this.known.delete(oldest);
  }
}

class LoosePlacing {
  readonly lifted: Lifted[];
  /** Cut down to the jobs of the route, in its order, so that copies are cheap. */
  private readonly problem: Problem;
  private readonly slot: number;
  private readonly rig: number;
  private readonly visits: readonly Visit[];
  private readonly own: readonly Visit[];

  constructor(problem: Problem, slot: number, visits: readonly Visit[], lifted: readonly Lifted[]) {
    this.problem = { ...problem, jobs: visits.map((visit) => problem.jobs[visit.job] as Job) };
    this.slot = slot;
    this.rig = problem.slots[slot]?.rig ?? 0;
    this.visits = visits;
    this.own = visits.map(({ mode }, job) => ({ job, mode }));
    this.lifted = lifted.map((each) => ({ ...each }));
  }

  /** Once more, with the same limits taken away. */
  again(care: Care): LooseRoute | null {
    const placement = this.placed(care);
    return placement.kind === 'placed' ? this.found(placement.outcome) : null;
  }

  loosen(first: RouteFault, care: Care): LooseRoute | null {
    let placement: Placement = { kind: 'impossible', fault: first };
    for (let tries = 0; placement.kind === 'impossible' && tries < MOST_TRIES; tries += 1) {
      const next = this.answersTo(placement.fault)
        .map((limits) => limits.filter((limit) => !this.isLifted(limit)))
        .find((limits) => limits.length > 0);
      if (next === undefined) return null;
      for (const limit of next) this.lifted.push({ limit, amount: NO_LIMIT });
      placement = this.placed(this.mayBeLowered() ? 'quick' : care);
    }
    if (placement.kind === 'impossible') return null;
    if (this.mayBeLowered()) {
      // Those that came last are the ones to be kept first.
      for (const [at, each] of [...this.lifted.entries()].toReversed()) if (!this.isNeeded(at)) this.lower(each);
      const final = this.placed(care);
      if (final.kind === 'placed') placement = final;
    }
    return this.found(placement.outcome);
  }

  private found(outcome: RouteOutcome): LooseRoute {
    const lifted = this.lifted.filter((each) => each.amount > 0).length;
    return { route: { ...outcome, visits: this.visits }, lifted };
  }

  /**
   * Whether a limit must be lifted for certain: customers' hours of a visit that could not be reached without, where nothing has been
   * lifted since but hours of visits after it.
   */
  private isNeeded(at: number): boolean {
    const { limit } = this.lifted[at] as Lifted;
    if (limit.kind !== 'customer-hours') return false;
    return this.lifted
      .slice(at + 1)
      .every((later) => later.amount === 0 || (later.limit.kind === 'customer-hours' && later.limit.job > limit.job));
  }

  /** A single limit that is there or not was needed: without it being lifted the row could not be placed. */
  private mayBeLowered(): boolean {
    const [first, ...others] = this.lifted;
    if (first === undefined) return false;
    return others.length > 0 || scaleOf(this.problem, this.rig, first.limit, this.own).step > 0;
  }

  private placed(care: Care): Placement {
    return new RefillPlacer(this.loosened()).place(this.slot, this.own, care, BROKEN_BEAM);
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

  /** The hours of this visit, and those of later ones that are then missed all the same. */
  private missedAfter(visit: number): readonly Limit[] {
    const missed = new RefillPlacer(this.loosened()).missed(this.slot, this.own);
    return [visit, ...missed.filter((each) => each > visit)].map((job): Limit => ({ kind: 'customer-hours', job }));
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
        return [this.missedAfter(fault.visit), ...all];
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
