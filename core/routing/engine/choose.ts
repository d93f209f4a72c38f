import { type Choice, Prices } from './prices.ts';

const NONE: readonly number[] = [];

/**
 * Chooses routes that serve each customer exactly once at less cost than `most`, from among those met: a set partitioning problem,
 * bounded by prices of customers (Lagrange multipliers, found by subgradient steps) and searched in depth until `effort` tries are
 * spent. Returns the chosen routes with their kinds, as places in `cost`; none where nothing cheaper was found. Repeatable: nothing
 * depends on the clock.
 *
 * Sources: Held and Karp, Operations Research 18(6), 1970, for the steps; Fisher, Management Science 27(1), 1981, for the bound.
 */
export function chooseRoutes(choice: Choice, customers: number, most: number, effort: number): readonly number[] {
  const prices = new Prices(choice, customers, most);
  const worthwhile = prices.worthwhile();
  if (worthwhile.length === 0) return NONE;
  return new Descent(choice, customers, most, prices, worthwhile, effort).best;
}

/** Depth-first search: the customer with the fewest routes left is served by each of them in turn. */
class Descent {
  best: readonly number[] = NONE;
  private readonly choice: Choice;
  /** Routes with their kinds, as places in `cost`. */
  private readonly list: Int32Array;
  private readonly prices: Prices;
  /** Vehicles of each kind that no chosen route uses. */
  private readonly free: Int32Array;
  /** Per place in `list`: how many chosen routes it clashes with. */
  private readonly clashes: Int32Array;
  /** Per customer: places of the routes that serve it. */
  private readonly serving: readonly number[][];
  /** Per customer: routes left. */
  private readonly left: Int32Array;
  private readonly served: Uint8Array;
  private readonly floor: Float64Array;
  private readonly chosen: number[] = [];
  private readonly customers: number;
  private readonly kinds: number;
  private most: number;
  private effort: number;

  constructor(choice: Choice, customers: number, most: number, prices: Prices, list: Int32Array, effort: number) {
    this.choice = choice;
    this.customers = customers;
    this.kinds = choice.most.length;
    this.free = choice.most.slice();
    this.most = most;
    this.prices = prices;
    this.list = list;
    this.effort = effort;
    this.clashes = new Int32Array(list.length);
    this.serving = Array.from({ length: customers + 1 }, () => []);
    this.left = new Int32Array(customers + 1);
    this.served = new Uint8Array(customers + 1);
    list.forEach((pick, place) => {
      this.each(pick, (customer) => {
        (this.serving[customer] as number[]).push(place);
        this.left[customer] = (this.left[customer] as number) + 1;
      });
    });
    this.floor = this.floors();
    let sum = 0;
    for (let kind = 0; kind < this.kinds; kind += 1) sum += this.priceOf(kind) * (choice.most[kind] as number);
    for (let customer = 1; customer <= customers; customer += 1) sum += this.floor[customer] as number;
    this.descend(0, sum, 0);
  }

  /** What serving a customer costs at least: prices under which no route is cheaper than its customers together. */
  private floors(): Float64Array {
    const { list, prices, choice } = this;
    const { first } = choice;
    const floor = prices.price.slice();
    const slack = new Float64Array(list.length);
    list.forEach((pick, place) => {
      const route = Math.floor(pick / this.kinds);
      let left = (choice.cost[pick] as number) - this.priceOf(pick % this.kinds);
      this.each(pick, (customer) => {
        left -= floor[customer] as number;
      });
      slack[place] = left;
      if (left >= 0) return;
      slack[place] = 0;
      const share = left / ((first[route + 1] as number) - (first[route] as number));
      this.each(pick, (customer) => {
        floor[customer] = (floor[customer] as number) + share;
      });
    });
    list.forEach((pick, place) => {
      let left = (choice.cost[pick] as number) - this.priceOf(pick % this.kinds);
      this.each(pick, (customer) => {
        left -= floor[customer] as number;
      });
      slack[place] = left;
    });
    for (let customer = 1; customer <= this.customers; customer += 1) {
      const serving = this.serving[customer] as number[];
      let room = Number.POSITIVE_INFINITY;
      for (const place of serving) room = Math.min(room, slack[place] as number);
      if (!(room > 0) || room === Number.POSITIVE_INFINITY) continue;
      floor[customer] = (floor[customer] as number) + room;
      for (const place of serving) slack[place] = (slack[place] as number) - room;
    }
    return floor;
  }

  private priceOf(kind: number): number {
    return this.prices.price[this.customers + 1 + kind] as number;
  }

  private each(pick: number, visit: (customer: number) => void): void {
    const { first, customers } = this.choice;
    const route = Math.floor(pick / this.kinds);
    const end = first[route + 1] as number;
    for (let at = first[route] as number; at < end; at += 1) visit(customers[at] as number);
  }

  /** `cost` of the chosen routes and `rest`, the least that the customers not yet served cost. */
  private descend(cost: number, rest: number, served: number): void {
    if (served === this.customers) {
      if (cost < this.most) {
        this.most = cost;
        this.best = [...this.chosen];
      }
      return;
    }
    const customer = this.scarcest();
    if (this.left[customer] === 0) return;
    for (const place of this.serving[customer] as number[]) {
      if (this.clashes[place] !== 0) continue;
      const pick = this.list[place] as number;
      const kind = pick % this.kinds;
      if (this.free[kind] === 0) continue;
      let floor = this.priceOf(kind);
      let more = 0;
      this.each(pick, (each) => {
        floor += this.floor[each] as number;
        more += 1;
      });
      const dearer = cost + (this.choice.cost[pick] as number);
      if (dearer + rest - floor >= this.most - 1e-6) continue;
      this.effort -= 1;
      if (this.effort < 0) return;
      this.chosen.push(pick);
      this.mark(pick, 1);
      this.descend(dearer, rest - floor, served + more);
      this.mark(pick, -1);
      this.chosen.pop();
    }
  }

  private scarcest(): number {
    const { left, served, customers } = this;
    let scarce = 0;
    let fewest = Number.POSITIVE_INFINITY;
    for (let customer = 1; customer <= customers; customer += 1) {
      if (served[customer] === 1 || (left[customer] as number) >= fewest) continue;
      fewest = left[customer] as number;
      scarce = customer;
    }
    return scarce;
  }

  /** A route is chosen (1) or given up again (-1). */
  private mark(pick: number, by: 1 | -1): void {
    const { clashes, serving, left, served, list } = this;
    const clear = by === 1 ? 0 : 1;
    const kind = pick % this.kinds;
    this.free[kind] = (this.free[kind] as number) - by;
    this.each(pick, (customer) => {
      served[customer] = by === 1 ? 1 : 0;
      for (const place of serving[customer] as number[]) {
        const before = clashes[place] as number;
        clashes[place] = before + by;
        if (before !== clear) continue;
        this.each(list[place] as number, (each) => {
          left[each] = (left[each] as number) - by;
        });
      }
    });
  }
}
