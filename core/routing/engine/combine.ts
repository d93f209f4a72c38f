import type { Random } from '../../base/index.ts';
import { chooseRoutes } from './choose.ts';
import { NearCombine } from './combine-near.ts';
import type { Found, FoundRoute } from './contract.ts';
import { RoutePool } from './pool.ts';
import type { Tours } from './tours.ts';

/** Steps that change something between two looks at routes that are not the best since the cooling began. */
const NOTED_EVERY = 4;
/** Cost of such routes at most, as a multiple of the best. */
const NOTED_COST = 1.02;
/** When routes are combined, as shares of a cooling: all at once, or part by part. */
const DUE = [0.9];
const DUE_PARTS = [0.7, 0.8, 0.9, 0.97];
/** Choices that are tried at most, and steps of the search for each of them. */
const MOST_EFFORT = 3000;
const STEPS_PER_EFFORT = 200;

/** Takes note of the routes of good solutions and looks for a cheaper choice among them, once in each cooling. */
export class Combine {
  private readonly tours: Tours;
  private readonly pool: RoutePool;
  /** Least cost since the cooling began, and of all. */
  private coolingBest = Number.POSITIVE_INFINITY;
  private best = Number.POSITIVE_INFINITY;
  private untilNote = NOTED_EVERY;
  /** Null where all routes are chosen at once. */
  private readonly near: NearCombine | null;
  private readonly due: readonly number[];
  private done = 0;
  /** Iterations when routes were combined last. */
  private combinedAt = 0;

  constructor(tours: Tours, random: Random, parts: boolean) {
    this.tours = tours;
    this.due = parts ? DUE_PARTS : DUE;
    this.pool = new RoutePool(tours, random);
    this.near = parts ? new NearCombine(tours, this.pool, random) : null;
  }

  /** Told after a step that changed the routes and was accepted. */
  note(): void {
    const { pool } = this;
    const { cost, excess = 0 } = this.tours.model;
    pool.changed();
    this.untilNote -= 1;
    if (excess > 0) return;
    if (cost < this.coolingBest) this.coolingBest = cost;
    else if (this.untilNote > 0 || cost > this.best * NOTED_COST) return;
    this.best = Math.min(this.best, cost);
    this.untilNote = NOTED_EVERY;
    pool.note();
  }

  /** Whether it is time to combine. */
  isDue(phase: number): boolean {
    if (phase >= (this.due[this.done] ?? Number.POSITIVE_INFINITY)) {
      this.done += 1;
      return true;
    }
    if (phase < (this.due[0] as number) && this.done > 0) {
      this.done = 0;
      this.coolingBest = Number.POSITIVE_INFINITY;
    }
    return false;
  }

  /**
   * Routes that serve every customer once and cost less than `best` together; none where none were found. The routes as they stand are
   * `best` where parts are chosen anew, and may be others after it.
   */
  run(best: Found): readonly FoundRoute[] {
    const { pool, tours } = this;
    const { cost: most, iterations } = best;
    if (this.near !== null) {
      pool.changedAll();
      pool.note();
      const routes = this.near.run(best.routes);
      pool.changedAll();
      return routes;
    }
    const effort = Math.min(MOST_EFFORT, Math.floor((iterations - this.combinedAt) / STEPS_PER_EFFORT));
    this.combinedAt = iterations;
    const chosen = chooseRoutes(pool, tours.customers, most, effort);
    pool.changedAll();
    const kinds = pool.most.length;
    return chosen.map((pick, route) => {
      const from = Math.floor(pick / kinds);
      const customers = [...pool.customers.subarray(pool.first[from] as number, pool.first[from + 1] as number)];
      return { route, customers, ways: [], note: pick % kinds };
    });
  }
}
