import type { Random } from '../../base/index.ts';
import { chooseRoutes } from './choose.ts';
import type { FoundRoute } from './contract.ts';
import { RoutePool } from './pool.ts';
import type { Tours } from './tours.ts';

/** Steps that change something between two looks at routes that are not the best since the cooling began. */
const NOTED_EVERY = 4;
/** Cost of such routes at most, as a multiple of the best. */
const NOTED_COST = 1.02;
/** Part of a cooling after which routes are combined. */
const DUE = 0.9;
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
  private done = false;
  /** Iterations when routes were combined last. */
  private combinedAt = 0;

  constructor(tours: Tours, random: Random) {
    this.tours = tours;
    this.pool = new RoutePool(tours, random);
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

  /** Whether it is time to combine, once in each cooling. */
  isDue(phase: number): boolean {
    if (phase >= DUE && !this.done) {
      this.done = true;
      return true;
    }
    if (phase < DUE && this.done) {
      this.done = false;
      this.coolingBest = Number.POSITIVE_INFINITY;
    }
    return false;
  }

  /** Routes that serve every customer once and cost less than `most` together; none where none were found. */
  run(most: number, iterations: number): readonly FoundRoute[] {
    const { pool, tours } = this;
    const effort = Math.min(MOST_EFFORT, Math.floor((iterations - this.combinedAt) / STEPS_PER_EFFORT));
    this.combinedAt = iterations;
    const chosen = chooseRoutes(pool, tours.customers, tours.routes, most, effort);
    pool.changedAll();
    return chosen.map((from, route) => {
      const customers = [...pool.customers.subarray(pool.first[from] as number, pool.first[from + 1] as number)];
      return { route, customers, ways: [] };
    });
  }
}
