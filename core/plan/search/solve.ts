import type { Found } from '../../routing/engine/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import { Budget, type Limits, type SolveRun } from './budget.ts';
import { Choices } from './choices.ts';
import type { Exchange } from './exchange.ts';
import { insertLeftOut } from './last-insertions.ts';
import { Legs } from './legs.ts';
import { type Near, nearest } from './near.ts';
import { type Measure, Polish } from './polish.ts';
import { SMALL } from './size.ts';
import { layOutSlots, type Slots } from './slots.ts';
import { type LaidStart, layOutStart, type Start } from './start.ts';
import { costOf, reckonState, type State } from './state.ts';
import { type JobTable, layOutJobs } from './tables.ts';
import { type Codes, RouteValues } from './values.ts';

/** How long a search goes on and where it begins. */
export type SolveOptions = Limits & {
  /** Same problem, same seed and same number of iterations give the same plan. */
  readonly seed: number;
  /** A plan to begin with. The search then starts cool, so that little is changed without need. */
  readonly start?: Start;
};

/** Routes that are reckoned by the labels at most while a plan is polished. */
const MOST_LABELLED = 2000;

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

function unreckoned(routes: readonly Codes[]): Omit<State, 'absent'> {
  return { routes, costs: routes.map(() => 0), lengths: routes.map(() => 0), cost: 0 };
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
  private readonly legs: Legs;
  private readonly exchange: Exchange | undefined;

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
    const { table, slots, near, values, start, budget } = this;
    const { seed, start: begun } = options;
    const warm = begun !== undefined;
    const { exchange } = run;
    this.exchange = exchange;
    this.legs = new Legs({ problem, table, slots, near, values, start, budget, seed, warm, exchange });
  }

  solve(): Solution {
    const { problem, table, budget } = this;
    const isEmpty = problem.jobs.length === 0 || problem.slots.length === 0;
    const found = isEmpty ? this.nothing() : this.stateOf(this.legs.run());
    this.exchange?.leave();
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
    const { iterations } = this.legs;
    return { problemHash: problem.hash, routes, unserved, cost, iterations, seed: this.options.seed };
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

  /** By rule, then with what was left out put in where it fits, then by the labels; and what no route could hold after all once more. */
  private polish(found: State): State {
    const { table, values, choices, near } = this;
    const signal = this.budget.polishSignal();
    const byRule: Measure = { cost: (slot, codes) => values.reckon(slot, codes), labels: false, signal };
    const rough = new Polish(found, values, choices, near, byRule).run();
    const filled = this.withLeftOut(this.drivable(rough));
    if (table.jobs <= SMALL || signal.stopped()) return filled;
    let labelled = 0;
    const cost = (slot: number, codes: Codes): number => {
      labelled += 1;
      return values.labelled(slot, codes);
    };
    const enough = { stopped: () => labelled >= MOST_LABELLED + table.jobs || signal.stopped() };
    const polished = new Polish(filled, values, choices, near, { cost, labels: true, signal: enough }).run();
    return this.withLeftOut(this.drivable(polished));
  }

  private withLeftOut(state: State): State {
    return insertLeftOut(state, this.values, this.choices, this.budget.lastSignal());
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
    for (const state of this.legs.shortlist.list()) {
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
