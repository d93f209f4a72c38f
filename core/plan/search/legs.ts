import { createRandom } from '../../base/index.ts';
import { type Found, Search, type SearchOptions } from '../../routing/engine/index.ts';
import type { Problem } from '../problem/index.ts';
import { AreaPlan, areasOf } from './areas.ts';
import type { Budget } from './budget.ts';
import { type Exchange, isTimeToAdopt, iterationsBetween } from './exchange.ts';
import { DayModel } from './model.ts';
import type { Near } from './near.ts';
import { Part } from './part.ts';
import { possibleJobs } from './possible.ts';
import { Shortlist } from './shortlist.ts';
import { SMALL } from './size.ts';
import type { Slots } from './slots.ts';
import { SmallModel } from './small-model.ts';
import type { LaidStart } from './start.ts';
import { isBetter } from './state.ts';
import type { JobTable } from './tables.ts';
import type { RouteValues } from './values.ts';

/** Share of the usual temperatures where there is a plan to begin with. */
const START_HEAT = 0.05;
/** Plans of up to so many jobs are begun several times; the last leg, from the best of them, is as long as so many others. */
const MOST_RESTARTED = 100;
const RESTARTS = 5;
const LAST_LEG = 2;
const LAST_HEAT = 0.3;
/** Between the seeds of two beginnings. */
const SEED_STRIDE = 7919;
/** Plans of a small problem that are placed with all care before the best is taken. */
const SHORTLISTED = 12;
/** Rounds between two looks at whether to tell something. */
const STRETCH = 64;
/**
 * Plans of so many jobs are searched as a whole for a share of the effort, then area by area, each of so many jobs, in so many rounds
 * over all areas.
 */
const LEAST_BY_AREAS = 3000;
const WHOLE_SHARE = 0.4;
const AREA_JOBS = 400;
const AREA_ROUNDS = 2;
const AREA_HEAT = 0.3;
/** What of the effort the whole then gets once more, as a share of that of all areas. */
const LAST_WHOLE = 0.4;

const NOTHING_FOUND: Found = { routes: [], absent: [], cost: 0, iterations: 0 };

/** What the legs of a search share. */
export type Field = {
  readonly problem: Problem;
  readonly table: JobTable;
  readonly slots: Slots;
  readonly near: Near;
  readonly values: RouteValues;
  readonly start: LaidStart;
  readonly budget: Budget;
  readonly seed: number;
  /** Whether there is a plan to begin with. */
  readonly warm: boolean;
  /** Other searches beside this one. */
  readonly exchange: Exchange | undefined;
};

/** The searches of which one planning consists, one after the other. */
export class Legs {
  readonly shortlist = new Shortlist(SHORTLISTED);
  iterations = 0;
  private readonly field: Field;
  private readonly possible: readonly number[];
  /** The best of the legs so far. */
  private best: Found | null = null;
  private isInAreas = false;

  constructor(field: Field) {
    this.field = field;
    this.possible = possibleJobs(field.values, field.slots, field.start);
  }

  /** The best routes found; jobs that can be done nowhere, not even alone on a day, are left out without being searched for. */
  run(): Found {
    const { field, possible } = this;
    const { problem, start, table } = field;
    if (possible.length === 0) return { ...NOTHING_FOUND, absent: [...problem.jobs.keys()].map((job) => job + 1) };
    if (possible.length === problem.jobs.length || table.jobs <= SMALL) return this.search(null);
    const found = this.search(new Part(problem, possible, [...problem.slots.keys()], start.pinned));
    const done = new Set([...found.absent, ...found.routes.flatMap((each) => each.customers)]);
    const never = [...problem.jobs.keys()].map((job) => job + 1).filter((customer) => !done.has(customer));
    return { ...found, absent: [...found.absent, ...never] };
  }

  /**
   * Small plans are begun several times, and the best beginning is searched on, so that no one bad turn decides. Large ones are searched
   * as a whole first, then area by area.
   */
  private search(part: Part | null): Found {
    const { field, possible } = this;
    const { seed, start, warm } = field;
    if (warm) {
      const { fixed, held, routes } = start;
      return this.leg(part, seed, 1, { start: routes, fixed, held, heat: START_HEAT });
    }
    if (possible.length >= LEAST_BY_AREAS) return this.byAreas(part, this.leg(part, seed, WHOLE_SHARE, {}));
    if (possible.length > MOST_RESTARTED || possible.length <= SMALL) return this.leg(part, seed, 1, {});
    for (let restart = 0; restart < RESTARTS && (this.best === null || !this.isOver()); restart += 1) {
      this.keep(this.leg(part, seed + restart * SEED_STRIDE, 1 / (RESTARTS - restart + LAST_LEG), {}));
    }
    if (!this.isOver()) this.keep(this.leg(part, seed, 1, { start: this.best?.routes, heat: LAST_HEAT }));
    return (this.best as Found | null) ?? NOTHING_FOUND;
  }

  /** Searches areas of neighbouring days by themselves, each from the plan as it is, until the effort is spent. */
  private byAreas(whole: Part | null, found: Found): Found {
    const { near, problem, seed, slots, start, values } = this.field;
    const random = createRandom(seed);
    const plan = new AreaPlan(values, slots, near, found);
    this.isInAreas = true;
    for (let round = 0; round < AREA_ROUNDS; round += 1) {
      const areas = areasOf(plan.routes, near, AREA_JOBS, random);
      const sizes = areas.map((area) => area.reduce((sum, each) => sum + each.customers.length, 0));
      const all = sizes.reduce((sum, each) => sum + each, 0);
      // What is left of the effort when all areas are done is for the whole once more.
      let left = (AREA_ROUNDS - round + AREA_ROUNDS * LAST_WHOLE) * all;
      for (const [number, area] of areas.entries()) {
        this.best = plan.whole(this.iterations);
        if (this.isOver()) return this.best;
        const { jobs, slotNumbers } = plan.open(area);
        const part = new Part(problem, jobs, slotNumbers, start.pinned);
        const share = (sizes[number] as number) / left;
        left -= sizes[number] as number;
        plan.take(slotNumbers, jobs, this.leg(part, random.next(), share, { start: area, heat: AREA_HEAT }));
      }
    }
    this.best = plan.whole(this.iterations);
    this.isInAreas = false;
    if (this.isOver()) return this.best;
    this.keep(this.leg(whole, seed, 1, { start: this.best.routes, heat: START_HEAT }));
    return this.best;
  }

  private keep(found: Found): void {
    if (this.best === null || isBetter(found, this.best)) this.best = found;
  }

  private isOver(): boolean {
    return this.field.budget.isOver(this.iterations);
  }

  /**
   * One search with a share of the effort that is left.
   *
   * @param part what is searched; null for the whole problem
   * @param start in the numbers of the whole problem, as the answer is
   */
  private leg(part: Part | null, seed: number, share: number, start: Partial<SearchOptions>): Found {
    const { budget } = this.field;
    const own = part === null ? start : inPart(part, start);
    const { withoutGain, clock, signal } = budget;
    const limits = { iterations: this.iterationsLeft(share), seconds: this.secondsLeft(share), withoutGain };
    const search = new Search(this.modelOf(part), { seed, ...limits, ...own }, { clock, signal });
    const between = iterationsBetween(this.possible.length);
    for (let until = STRETCH; ; until += STRETCH) {
      search.run(until);
      const over = search.pace.iterations < until;
      if (!over && until % between === 0 && share === 1 && !this.isInAreas) this.meet(search, part);
      if (over || budget.isDue()) this.tell(search.found());
      if (over) break;
    }
    this.iterations += search.pace.iterations;
    const found = search.found();
    return part === null ? found : part.outOf(found);
  }

  /** Goes on from the routes of another search where they are better and it is late enough; they are offered in any case. */
  private meet(search: Search, part: Part | null): void {
    const { exchange } = this.field;
    if (exchange === undefined) return;
    const found = search.found();
    const other = exchange.meet(part === null ? found : part.outOf(found));
    if (other === null || !isTimeToAdopt(search.pace.share)) return;
    search.adopt(part === null ? other.routes : part.into(other.routes));
  }

  private modelOf(part: Part | null): SmallModel | DayModel {
    const { table, slots, near, values } = this.field;
    if (part !== null) return new DayModel(part.table, part.slots, part.near);
    return table.jobs <= SMALL
      ? new SmallModel(table, slots, near, values, this.shortlist)
      : new DayModel(table, slots, near);
  }

  /** What a leg may use of the iterations that are left, at least one; likewise of the time. */
  private iterationsLeft(share: number): number | undefined {
    const { iterations } = this.field.budget;
    return iterations === undefined ? undefined : Math.max(1, Math.ceil((iterations - this.iterations) * share));
  }

  private secondsLeft(share: number): number | undefined {
    const { budget } = this.field;
    const { seconds } = budget;
    return seconds === undefined ? undefined : Math.max(0, (seconds - budget.spentSeconds()) * share);
  }

  /** A leg on an area says nothing of the whole: there the best plan so far is told. */
  private tell(found: Found): void {
    const { table, budget } = this.field;
    const { best } = this;
    const { absent, cost } = best !== null && (this.isInAreas || isBetter(best, found)) ? best : found;
    const done = budget.share(this.iterations + found.iterations);
    budget.report(done, table.jobs - absent.length, table.jobs, cost, false);
  }
}

function inPart(part: Part, { start, fixed, held, ...rest }: Partial<SearchOptions>): Partial<SearchOptions> {
  return {
    ...rest,
    start: part.into(start ?? []),
    fixed: part.customers(fixed ?? []),
    held: part.customers(held ?? []),
  };
}
