import { type Found, type FoundRoute, Search, type SearchOptions } from '../../routing/engine/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import { Budget, type Limits, type SolveRun } from './budget.ts';
import { Choices } from './choices.ts';
import { insertLeftOut } from './last-insertions.ts';
import { DayModel } from './model.ts';
import { type Near, nearest } from './near.ts';
import { type Measure, Polish } from './polish.ts';
import { Shortlist } from './shortlist.ts';
import { SMALL } from './size.ts';
import { layOutSlots, type Slots } from './slots.ts';
import { SmallModel } from './small-model.ts';
import { type LaidStart, layOutStart, type Start } from './start.ts';
import { costOf, reckonState, type State } from './state.ts';
import { type JobTable, layOutJobs } from './tables.ts';
import { type Codes, RouteValues } from './values.ts';

export type SolveOptions = Limits & {
  /** Same problem, same seed and same number of iterations give the same plan. */
  readonly seed: number;
  /** A plan to begin with. The search then starts cool, so that little is changed without need. */
  readonly start?: Start;
};

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
/** Routes that are reckoned by the labels at most while a plan is polished. */
const MOST_LABELLED = 2000;
/** Rounds between two looks at whether to tell something. */
const STRETCH = 64;

/**
 * Searches for the order of stops, their days, rigs and methods: ruin and recreate with annealing on the routing engine, then
 * polishing. In problems of up to eight jobs every route is reckoned by the labels of ../refills, and the best dozen plans are placed
 * with all care; in larger ones routes are reckoned by rule, and the labels come in while the best plan is polished. Told to stop, it
 * returns the best plan so far.
 *
 * Fewest jobs left out comes first, then cost in nano-dollars. No proof of optimality is given; tests compare small problems with
 * brute force.
 */
export function solve(problem: Problem, options: SolveOptions, run: SolveRun = {}): Solution {
  return new Planning(problem, options, run).solve();
}

const NOTHING_FOUND: Found = { routes: [], absent: [], cost: 0, iterations: 0 };

function unreckoned(routes: readonly Codes[]): Omit<State, 'absent'> {
  return { routes, costs: routes.map(() => 0), lengths: routes.map(() => 0), cost: 0 };
}

function isBetter(one: Found, other: Found): boolean {
  if (one.absent.length !== other.absent.length) return one.absent.length < other.absent.length;
  return one.cost < other.cost;
}

class Planning {
  private readonly problem: Problem;
  private readonly options: SolveOptions;
  private readonly budget: Budget;
  private readonly table: JobTable;
  private readonly values: RouteValues;
  private readonly start: LaidStart;
  private readonly slots: Slots;
  private readonly near: Near;
  private readonly choices: Choices;
  private readonly shortlist = new Shortlist(SHORTLISTED);
  private iterations = 0;
  /** The best of the legs so far. */
  private best: Found | null = null;

  constructor(problem: Problem, options: SolveOptions, run: SolveRun) {
    this.problem = problem;
    this.options = options;
    this.budget = new Budget(options, run, problem.jobs.length);
    this.table = layOutJobs(problem);
    this.values = new RouteValues(this.table);
    this.start = layOutStart(problem, options.start);
    this.slots = layOutSlots(this.table, this.start.pinned);
    this.near = nearest(this.table);
    this.choices = new Choices(this.table, this.slots, this.start.kept);
  }

  solve(): Solution {
    const { problem, table, budget } = this;
    const isEmpty = problem.jobs.length === 0 || problem.slots.length === 0;
    const found = isEmpty ? this.nothing() : this.stateOf(this.search());
    const polished = this.polish(found);
    const kept = table.jobs <= SMALL ? this.cheapest(polished) : polished;
    const routes = this.place(kept);
    const cost = costOf(
      problem,
      routes.map((each) => each.cost),
      routes.map((each) => each.paidMs),
    );
    budget.report(1, table.jobs - kept.absent.length, table.jobs, cost, true);
    const unserved = [...kept.absent].sort((left, right) => left - right);
    const { iterations } = this;
    return { problemHash: problem.hash, routes, unserved, cost, iterations, seed: this.options.seed };
  }

  /** Small plans are begun several times, and the best beginning is searched on; so that no one bad turn decides. */
  private search(): Found {
    const { options, table, start, iterationsLeft, secondsLeft } = this;
    const once = options.start !== undefined || table.jobs <= SMALL || table.jobs > MOST_RESTARTED;
    if (once) return this.leg(options.seed, iterationsLeft(1), secondsLeft(1), this.warm(start.routes));
    for (let restart = 0; restart < RESTARTS && (this.best === null || !this.isOver()); restart += 1) {
      const share = 1 / (RESTARTS - restart + LAST_LEG);
      this.keep(this.leg(options.seed + restart * SEED_STRIDE, iterationsLeft(share), secondsLeft(share), {}));
    }
    const warm = { start: this.best?.routes, heat: LAST_HEAT };
    if (!this.isOver()) this.keep(this.leg(options.seed, iterationsLeft(1), secondsLeft(1), warm));
    return (this.best as Found | null) ?? NOTHING_FOUND;
  }

  private keep(found: Found): void {
    if (this.best === null || isBetter(found, this.best)) this.best = found;
  }

  private isOver(): boolean {
    return this.budget.isOver(this.iterations);
  }

  /** What a leg may use of the iterations that are left, at least one; likewise of the time. */
  private readonly iterationsLeft = (share: number): number | undefined => {
    const { iterations } = this.budget;
    return iterations === undefined ? undefined : Math.max(1, Math.ceil((iterations - this.iterations) * share));
  };

  private readonly secondsLeft = (share: number): number | undefined => {
    const { seconds } = this.budget;
    return seconds === undefined ? undefined : Math.max(0, (seconds - this.budget.spentSeconds()) * share);
  };

  private warm(routes: readonly FoundRoute[]): Partial<SearchOptions> {
    const { fixed, held } = this.start;
    return this.options.start === undefined ? {} : { start: routes, fixed, held, heat: START_HEAT };
  }

  private leg(
    seed: number,
    iterations: number | undefined,
    seconds: number | undefined,
    start: Partial<SearchOptions>,
  ): Found {
    const { table, slots, near, values, budget } = this;
    const model =
      table.jobs <= SMALL
        ? new SmallModel(table, slots, near, values, this.shortlist)
        : new DayModel(table, slots, near);
    const { withoutGain, clock, signal } = budget;
    const search = new Search(model, { seed, iterations, seconds, withoutGain, ...start }, { clock, signal });
    for (let until = STRETCH; ; until += STRETCH) {
      search.run(until);
      const over = search.pace.iterations < until;
      if (over || budget.isDue()) this.tell(search.found());
      if (over) break;
    }
    this.iterations += search.pace.iterations;
    return search.found();
  }

  private tell(found: Found): void {
    const { table, budget, best } = this;
    const { absent, cost } = best !== null && isBetter(best, found) ? best : found;
    const share = budget.share(this.iterations + found.iterations);
    budget.report(share, table.jobs - absent.length, table.jobs, cost, false);
  }

  private nothing(): State {
    const { jobs, slots } = this.problem;
    return { ...unreckoned(slots.map(() => [])), absent: [...jobs.keys()] };
  }

  private stateOf({ routes: found, absent }: Found): State {
    const { table, slots } = this;
    const routes: Codes[] = Array.from({ length: slots.count }, () => []);
    for (const { route, customers, ways } of found) {
      routes[route] = customers.map((customer, at) => (customer - 1) * table.width + (ways[at] as number));
    }
    return { ...unreckoned(routes), absent: absent.map((customer) => customer - 1) };
  }

  /** By rule, then with what was left out put in where it fits, then by the labels. */
  private polish(found: State): State {
    const { table, values, choices, near } = this;
    const signal = this.budget.polishSignal();
    const byRule: Measure = { cost: (slot, codes) => values.reckon(slot, codes), labels: false, signal };
    const rough = new Polish(found, values, choices, near, byRule).run();
    const filled = insertLeftOut(this.drivable(rough), values, choices, signal);
    if (table.jobs <= SMALL || signal.stopped()) return filled;
    let labelled = 0;
    const cost = (slot: number, codes: Codes): number => {
      labelled += 1;
      return values.labelled(slot, codes);
    };
    const enough = { stopped: () => labelled >= MOST_LABELLED + table.jobs || signal.stopped() };
    return this.drivable(new Polish(filled, values, choices, near, { cost, labels: true, signal: enough }).run());
  }

  /** Takes visits out of routes that cannot be driven after all, where they fail, until they can. */
  private drivable(state: State): State {
    const { values, choices } = this;
    const absent = [...state.absent];
    const routes = state.routes.map((codes, slot) => {
      let kept = codes;
      while (kept.length > 0 && !Number.isFinite(values.prove(slot, kept))) {
        const at = choices.nearestFree(slot, kept, Math.max(0, values.failsAt(slot, kept)));
        absent.push(choices.jobOf(kept[at] as number));
        kept = kept.toSpliced(at, 1);
      }
      return kept;
    });
    return reckonState({ routes, absent }, values, (slot, codes) => values.prove(slot, codes));
  }

  /** The cheapest of the best plans that the search met when each is placed with all care. */
  private cheapest(first: State): State {
    let best = first;
    let least = this.values.carefulCost(first);
    for (const state of this.shortlist.list()) {
      if (state.absent.length > first.absent.length) continue;
      const cost = this.values.carefulCost(state);
      if (cost >= least) continue;
      best = state;
      least = cost;
    }
    return best;
  }

  private place(state: State): RouteOutcome[] {
    return state.routes.flatMap((codes, slot) => {
      if (codes.length === 0) return [];
      const outcome = this.values.place(slot, codes, 'explained');
      if (outcome === null) throw new RangeError(`route ${slot} was proved and cannot be placed`);
      return [outcome];
    });
  }
}
