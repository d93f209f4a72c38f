import type { Random } from '../../base/index.ts';
import { chooseRoutes } from './choose.ts';
import type { FoundRoute } from './contract.ts';
import type { RoutePool } from './pool.ts';
import type { Choice } from './prices.ts';
import type { Tours } from './tours.ts';

/** Customers of the routes that are chosen anew at a time, at least, and how often each customer is among them, on average. */
const PART = 100;
const TIMES = 2;
/** Choices that are tried for one part. */
const EFFORT = 100;

/**
 * Looks for cheaper choices among the routes met, for the customers of a few neighbouring routes at a time: so many routes of a large
 * problem are too many to choose from at once, while its regions are rarely all at their best in one solution.
 */
export class NearCombine {
  private readonly tours: Tours;
  private readonly pool: RoutePool;
  private readonly random: Random;
  /** Routes as they are now: `routes[of[customer]]` serves the customer. */
  private routes: Served[] = [];
  private readonly of: Int32Array;
  private readonly free: Int32Array;
  /** Per customer: its number in the part at hand, 0 where it is in none. */
  private readonly local: Int32Array;

  constructor(tours: Tours, pool: RoutePool, random: Random) {
    this.tours = tours;
    this.pool = pool;
    this.random = random;
    this.of = new Int32Array(tours.customers + 1);
    this.local = new Int32Array(tours.customers + 1);
    this.free = pool.most.slice();
  }

  /** Begins with the routes as they stand, which serve everyone; returns cheaper ones, none where none were found. */
  run(found: readonly FoundRoute[]): readonly FoundRoute[] {
    this.begin(found);
    const parts = Math.ceil((TIMES * this.tours.customers) / PART);
    let gained = false;
    for (let part = 0; part < parts; part += 1) if (this.better(this.near())) gained = true;
    if (!gained) return [];
    return this.routes.map(({ customers, kind }, route) => ({ route, customers, ways: [], note: kind }));
  }

  private begin(found: readonly FoundRoute[]): void {
    this.free.set(this.pool.most);
    this.routes = found.map(({ customers, note = 0, route }) => {
      return { customers, kind: note, cost: this.tours.model.costOf?.(route, note) ?? Number.POSITIVE_INFINITY };
    });
    this.number();
    for (const { kind } of this.routes) this.free[kind] = (this.free[kind] as number) - 1;
  }

  private number(): void {
    this.routes.forEach(({ customers }, at) => {
      for (const customer of customers) this.of[customer] = at;
    });
  }

  /** Routes around a customer drawn by chance, until they have customers enough. */
  private near(): ReadonlySet<number> {
    const { near, nearWidth, customers } = this.tours.model;
    const row = (1 + this.random.below(customers)) * nearWidth;
    const chosen = new Set<number>();
    let count = 0;
    for (let rank = 0; rank < nearWidth && count < PART; rank += 1) {
      const at = this.of[near[row + rank] as number] as number;
      if (chosen.has(at)) continue;
      chosen.add(at);
      count += this.routes[at]?.customers.length ?? 0;
    }
    return chosen;
  }

  /** Chooses the routes of a part anew; whether that made it cheaper. */
  private better(part: ReadonlySet<number>): boolean {
    const { free, local } = this;
    const own = this.routes.filter((_, at) => part.has(at));
    const members = own.flatMap((each) => each.customers);
    members.forEach((customer, at) => {
      local[customer] = at + 1;
    });
    for (const { kind } of own) free[kind] = (free[kind] as number) + 1;
    const { choice, places } = this.choiceOf();
    for (const customer of members) local[customer] = 0;
    const cost = own.reduce((sum, each) => sum + each.cost, 0);
    const kinds = free.length;
    const picks = chooseRoutes(choice, members.length, cost, EFFORT);
    const chosen =
      picks.length === 0
        ? own
        : picks.map((pick) => ({
            customers: [...this.pool.customersOf(places[Math.floor(pick / kinds)] as number)],
            kind: pick % kinds,
            cost: choice.cost[pick] as number,
          }));
    for (const { kind } of chosen) free[kind] = (free[kind] as number) - 1;
    if (picks.length === 0) return false;
    this.routes = [...this.routes.filter((_, at) => !part.has(at)), ...chosen];
    this.number();
    return true;
  }

  /** The routes met that serve customers of the part alone, and their places in the pool. */
  private choiceOf(): { readonly choice: Choice; readonly places: readonly number[] } {
    const { pool, local } = this;
    const kinds = pool.most.length;
    const places: number[] = [];
    const customers: number[] = [];
    const first = [0];
    for (let place = 0; place < pool.count; place += 1) {
      const [from, to] = [pool.first[place] as number, pool.first[place + 1] as number];
      let at = from;
      while (at < to && local[pool.customers[at] as number] !== 0) at += 1;
      if (at < to) continue;
      places.push(place);
      for (at = from; at < to; at += 1) customers.push(local[pool.customers[at] as number] as number);
      first.push(customers.length);
    }
    const cost = new Float64Array(places.length * kinds);
    places.forEach((place, at) => {
      cost.set(pool.cost.subarray(place * kinds, (place + 1) * kinds), at * kinds);
    });
    return {
      places,
      choice: {
        count: places.length,
        most: this.free.slice(),
        cost,
        first: Int32Array.from(first),
        customers: Int32Array.from(customers),
      },
    };
  }
}

type Served = { readonly customers: readonly number[]; readonly kind: number; readonly cost: number };
