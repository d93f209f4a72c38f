import { type Clock, createRandom, NEVER_STOP, type StopSignal } from '../base/index.ts';
import { nearness } from './neighbours.ts';
import { Recreate } from './recreate.ts';
import { Ruin } from './ruin.ts';
import { Tours } from './tours.ts';
import type { RoutingProblem, RoutingSolution } from './types.ts';

export type RoutingOptions = {
  /** Same problem, seed and iterations: same routes. */
  readonly seed: number;
  readonly iterations?: number;
  readonly seconds?: number;
};
export type RoutingRun = { readonly clock?: Clock; readonly signal?: StopSignal };

/** Temperatures at the start and at the end, as shares of the mean edge of the first routes. */
const START_HEAT = 0.7;
const END_HEAT = 0.003;
const CLOCK_EVERY = 64;

/**
 * Ruin and recreate with annealing. Fewest customers left out comes first, then cost. No proof of optimality is given.
 * Source: Christiaens and Vanden Berghe, "Slack induction by string removals for vehicle routing problems", Transportation Science
 * 54(2), 2020; the counters of absence are their fleet rule.
 */
export function solveRouting(problem: RoutingProblem, options: RoutingOptions, run: RoutingRun = {}): RoutingSolution {
  return new RoutingSearch(problem, options, run).solve();
}

class RoutingSearch {
  private readonly problem: RoutingProblem;
  private readonly tours: Tours;
  private readonly random;
  private readonly ruin: Ruin;
  private readonly recreate: Recreate;
  private readonly absences: Float64Array;
  private readonly absent: Int32Array;
  private readonly kept: Int32Array;
  private absentCount: number;
  private readonly best: Best;
  private readonly pace: Pace;

  constructor(problem: RoutingProblem, options: RoutingOptions, run: RoutingRun) {
    const near = nearness(problem);
    this.problem = problem;
    this.tours = new Tours(problem);
    this.random = createRandom(options.seed);
    this.ruin = new Ruin(this.tours, near, this.random);
    this.recreate = new Recreate(this.tours, near, this.random);
    this.absences = new Float64Array(problem.customers + 1);
    this.absent = Int32Array.from({ length: problem.customers }, (_, index) => index + 1);
    this.kept = new Int32Array(problem.customers);
    this.absentCount = problem.customers;
    this.best = new Best(this.tours);
    this.pace = new Pace(options, run);
  }

  solve(): RoutingSolution {
    const { tours, pace, best } = this;
    this.absentCount = this.recreate.run(this.absent, this.absentCount);
    const edges = this.problem.customers - this.absentCount + tours.used;
    const hot = (START_HEAT * tours.cost) / Math.max(1, edges);
    best.take(this.absent, this.absentCount);
    while (!pace.over()) {
      const heat = hot * (END_HEAT / START_HEAT) ** pace.share;
      this.step(heat);
    }
    return { ...best.solution(), iterations: pace.iterations };
  }

  private step(heat: number): void {
    const { tours, absent, kept, best } = this;
    const before = tours.cost;
    const beforeCount = this.absentCount;
    for (let at = 0; at < beforeCount; at += 1) kept[at] = absent[at] as number;
    tours.mark();
    const left = this.recreate.run(absent, this.ruin.run(absent, beforeCount));
    const limit = before - heat * Math.log(1 - this.random.unit());
    if (!this.accepts(beforeCount, left, limit)) {
      tours.undo();
      for (let at = 0; at < beforeCount; at += 1) absent[at] = kept[at] as number;
      return;
    }
    this.absentCount = left;
    if (left < best.absentCount || (left === best.absentCount && tours.cost < best.cost)) best.take(absent, left);
  }

  private accepts(beforeCount: number, left: number, limit: number): boolean {
    if (beforeCount === 0 && left === 0) return this.tours.cost < limit;
    let before = 0;
    let after = 0;
    for (let at = 0; at < beforeCount; at += 1) before += this.absences[this.kept[at] as number] as number;
    for (let at = 0; at < left; at += 1) {
      const customer = this.absent[at] as number;
      after += this.absences[customer] as number;
      this.absences[customer] = (this.absences[customer] as number) + 1;
    }
    if (beforeCount > 0 && after < before) return true;
    return left <= beforeCount && this.tours.cost < limit;
  }
}

/** The best routes so far. */
class Best {
  cost = Number.POSITIVE_INFINITY;
  absentCount = Number.POSITIVE_INFINITY;
  private readonly tours: Tours;
  private readonly next: Int32Array;
  private absent: readonly number[] = [];

  constructor(tours: Tours) {
    this.tours = tours;
    this.next = tours.next.slice();
  }

  take(absent: Int32Array, count: number): void {
    this.cost = this.tours.cost;
    this.absentCount = count;
    this.next.set(this.tours.next);
    this.absent = [...absent.subarray(0, count)];
  }

  solution(): Omit<RoutingSolution, 'iterations'> {
    const { nodes, problem } = this.tours;
    const routes: number[][] = [];
    for (let route = 0; route < problem.vehicles; route += 1) {
      const customers: number[] = [];
      const sentinel = nodes + route;
      for (let node = this.next[sentinel] as number; node !== sentinel; node = this.next[node] as number) {
        customers.push(node);
      }
      if (customers.length > 0) routes.push(customers);
    }
    return { routes, absent: this.absent, cost: this.cost };
  }
}

/** How far the search is, by iterations or by the clock. */
class Pace {
  iterations = 0;
  share = 0;
  private readonly limit: number;
  private readonly clock: Clock | undefined;
  private readonly signal: StopSignal;
  private readonly startMs: number;
  private readonly spanMs: number;

  constructor({ iterations, seconds }: RoutingOptions, { clock, signal }: RoutingRun) {
    this.limit = iterations ?? (seconds === undefined ? 100_000 : Number.POSITIVE_INFINITY);
    this.clock = clock;
    this.signal = signal ?? NEVER_STOP;
    this.startMs = clock?.nowMs() ?? 0;
    this.spanMs = seconds === undefined || clock === undefined ? Number.POSITIVE_INFINITY : seconds * 1000;
  }

  over(): boolean {
    if (this.iterations % CLOCK_EVERY === 0) {
      const spent = (this.clock?.nowMs() ?? 0) - this.startMs;
      this.share = Math.max(this.iterations / this.limit, spent / this.spanMs);
      if (this.share >= 1 || this.signal.stopped()) return true;
    }
    if (this.iterations >= this.limit) return true;
    this.iterations += 1;
    return false;
  }
}
