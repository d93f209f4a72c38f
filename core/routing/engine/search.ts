import { type Clock, createRandom, type Random, type StopSignal } from '../../base/index.ts';
import { Best } from './best.ts';
import { Combine } from './combine.ts';
import type { Found, FoundRoute, RouteModel } from './contract.ts';
import { type Limits, Pace } from './pace.ts';
import { Recreate } from './recreate.ts';
import { GroupRecreate } from './recreate-groups.ts';
import { Ruin } from './ruin.ts';
import { Tours } from './tours.ts';

/** Steps of one cooling, by the square of the customers: what small problems have found by then they rarely better by cooling slower. */
const STEPS_BY_SQUARE = 200;
/** The same where the routes of all coolings are combined, so that more of them pay. */
const STEPS_COMBINED = 40;
/** Routes of problems of more customers are not combined: coolings are too few for it. */
const MOST_COMBINED = 250;

/** How long a search goes on, where it begins and what it may not change. */
export type SearchOptions = Limits & {
  /** Same model, seed and iterations: same routes. */
  readonly seed: number;
  /** Routes to begin with; customers in none of them are put in where they fit. */
  readonly start?: readonly FoundRoute[] | undefined;
  /** Customers that stay as they start, in order, with all that lies before them in their route. */
  readonly fixed?: readonly number[] | undefined;
  /** Customers that no step may leave out once they are in a route. */
  readonly held?: readonly number[] | undefined;
  /** Share of the usual temperatures, 1 unless told; small values keep close to the start. */
  readonly heat?: number | undefined;
};
/** The clock and the stop signal that a search is given; without a clock it knows no seconds. */
export type SearchRun = { readonly clock?: Clock | undefined; readonly signal?: StopSignal | undefined };

/** With so few customers absent the counters of absence may decide, and how often they do. */
const FEW_ABSENT = 5;
const COUNTERS_SHARE = 0.2;

/**
 * Ruin and recreate with annealing over any model. Fewest customers left out comes first, then cost. No proof of optimality is
 * given. Source: Christiaens and Vanden Berghe, "Slack induction by string removals for vehicle routing problems", Transportation
 * Science 54(2), 2020; the counters of absence are their fleet rule.
 */
export class Search {
  readonly tours: Tours;
  readonly pace: Pace;
  private readonly model: RouteModel;
  private readonly random: Random;
  private readonly ruin: Ruin;
  private readonly recreate: Recreate;
  private readonly absences: Float64Array;
  private readonly absent: Int32Array;
  private readonly kept: Int32Array;
  private absentCount: number;
  private readonly best: Best;
  private readonly hot: number;
  /** Null where routes cannot be combined. */
  private readonly combine: Combine | null;
  /** Steps of one cooling at least. */
  private readonly cooling: number;
  private heat: number;
  /** Share of the search for which the heat was reckoned last. */
  private share = -1;
  /** 1 for customers that no step may leave out; null where there are none. */
  private readonly held: Uint8Array | null;

  constructor(model: RouteModel, options: SearchOptions, run: SearchRun = {}) {
    const { customers } = model;
    this.model = model;
    this.tours = new Tours(model);
    this.random = createRandom(options.seed);
    this.ruin = new Ruin(this.tours, this.random);
    this.recreate =
      model.groups === undefined
        ? new Recreate(this.tours, this.random)
        : new GroupRecreate(this.tours, this.random, model.groups);
    this.absences = new Float64Array(customers + 1);
    this.absent = new Int32Array(customers);
    this.kept = new Int32Array(customers);
    this.pace = new Pace(options, run.clock, run.signal);
    this.held = options.held === undefined || options.held.length === 0 ? null : new Uint8Array(customers + 1);
    for (const customer of options.held ?? []) if (this.held !== null) this.held[customer] = 1;
    this.begin(options.start ?? []);
    this.tours.fix(options.fixed ?? []);
    this.absentCount = this.recreate.run(this.absent, this.listAbsent(), 0, 1);
    this.best = new Best(this.tours);
    this.best.offer(this.absent, this.absentCount);
    this.hot = (options.heat ?? 1) * model.heat.start * model.meanEdge();
    this.heat = this.hot;
    const whole = model.costOf !== undefined && (options.fixed ?? []).length === 0;
    const few = customers <= MOST_COMBINED;
    const parts = model.combinesParts === true;
    this.combine = whole && (few || parts) ? new Combine(this.tours, this.random, parts) : null;
    this.cooling = (whole && few ? STEPS_COMBINED : STEPS_BY_SQUARE) * customers ** 2;
  }

  /** Searches on until a limit is met, or until so many iterations are done. */
  run(untilIteration = Number.POSITIVE_INFINITY): void {
    const { pace } = this;
    while (pace.iterations < untilIteration && !pace.over()) {
      if (pace.share !== this.share) this.cool();
      this.step(this.heat);
    }
  }

  /** Brings the heat up to date, and what else changes in the course of a cooling. */
  private cool(): void {
    const { model, pace, combine } = this;
    const { start, end } = model.heat;
    this.share = pace.share;
    const phase = pace.phase(this.cooling);
    this.heat = this.hot * (end / start) ** phase;
    model.ease?.(phase);
    if (combine?.isDue(phase) !== true || this.best.absentCount > 0) return;
    const best = this.best.found(pace.iterations);
    if (model.combinesParts === true) this.adopt(best.routes);
    const routes = combine.run(best);
    if (routes.length > 0) this.adopt(routes);
  }

  found(): Found {
    return this.best.found(this.pace.iterations);
  }

  /** Goes on from other routes, as found by another search of the same problem. */
  adopt(routes: readonly FoundRoute[]): void {
    const { tours } = this;
    for (let customer = 1; customer <= tours.customers; customer += 1) {
      if (tours.routeOf[customer] !== -1 && tours.fixed[customer] === 0) tours.remove(customer);
    }
    this.begin(routes);
    this.absentCount = this.listAbsent();
    if (this.best.offer(this.absent, this.absentCount)) this.pace.gained();
  }

  private begin(routes: readonly FoundRoute[]): void {
    const { tours } = this;
    this.model.takeUp?.(routes);
    for (const { route, customers, ways } of routes) {
      let after = tours.sentinel(route);
      customers.forEach((customer, at) => {
        if (tours.routeOf[customer] === -1) tours.insert(customer, after, ways[at] ?? 0);
        after = customer;
      });
    }
    for (let route = 0; route < tours.routes; route += 1) this.model.renew(route);
    tours.mark();
  }

  private listAbsent(): number {
    const firstOf = this.model.groups?.firstOf;
    let count = 0;
    for (let customer = 1; customer <= this.tours.customers; customer += 1) {
      if (this.tours.routeOf[customer] !== -1 || this.model.parts?.spare(customer) === true) continue;
      const first = firstOf?.[customer] ?? customer;
      if (count > 0 && this.absent[count - 1] === first) continue;
      this.absent[count] = first;
      count += 1;
    }
    return count;
  }

  private step(heat: number): void {
    const { tours, model, absent, kept, best } = this;
    const before = model.cost;
    const beforeCount = this.absentCount;
    for (let at = 0; at < beforeCount; at += 1) kept[at] = absent[at] as number;
    tours.mark();
    const limit = before - heat * Math.log(1 - this.random.unit());
    const bounded = beforeCount === 0 && model.growing === true;
    const count = this.ruin.run(absent, beforeCount);
    model.loosen?.();
    const left = this.recreate.run(absent, count, beforeCount, this.ruin.seed, bounded ? limit : undefined);
    if (left >= 0) model.settle?.();
    if (left < 0 || !this.accepts(beforeCount, left, limit)) {
      tours.undo();
      for (let at = 0; at < beforeCount; at += 1) absent[at] = kept[at] as number;
      return;
    }
    this.absentCount = left;
    if (left === 0 && model.cost !== before) this.combine?.note();
    if (best.offer(absent, left)) this.pace.gained();
  }

  /**
   * Fewer absent customers are always better; as many are as good where the cost is. Where few are absent, now and then the counters
   * of absence decide instead, whatever it costs: always, the routes would never settle enough to make room.
   */
  private accepts(beforeCount: number, left: number, limit: number): boolean {
    if (left === 0 && beforeCount === 0) return this.model.cost < limit;
    if (this.held !== null && this.heldAmong(this.absent, left) > this.heldAmong(this.kept, beforeCount)) return false;
    const counted = beforeCount > 0 && beforeCount <= FEW_ABSENT && this.random.unit() < COUNTERS_SHARE;
    if (counted && this.counts(this.kept, beforeCount) > this.counts(this.absent, left)) return true;
    for (let at = 0; at < left; at += 1) {
      const customer = this.absent[at] as number;
      this.absences[customer] = (this.absences[customer] as number) + 1;
    }
    return left < beforeCount || (left === beforeCount && this.model.cost < limit);
  }

  private heldAmong(list: Int32Array, count: number): number {
    let sum = 0;
    for (let at = 0; at < count; at += 1) sum += this.held?.[list[at] as number] ?? 0;
    return sum;
  }

  /** How often the first `count` customers of a list were left out so far. */
  private counts(list: Int32Array, count: number): number {
    let sum = 0;
    for (let at = 0; at < count; at += 1) sum += this.absences[list[at] as number] as number;
    return sum;
  }
}

/** One search from beginning to end. */
export function search(model: RouteModel, options: SearchOptions, run: SearchRun = {}): Found {
  const engine = new Search(model, options, run);
  engine.run();
  return engine.found();
}
