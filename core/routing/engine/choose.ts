/** Routes to choose from: route r has the customers `customers[first[r] .. first[r + 1])`. */
export type Choice = {
  readonly count: number;
  readonly cost: Float64Array;
  readonly first: Int32Array;
  readonly customers: Int32Array;
};

const ROUNDS = 200;
/** Rounds without a better bound before the steps are halved. */
const PATIENCE = 8;
/** Routes that are searched among at most, the most promising first. */
const MOST_SEARCHED = 3000;
const NONE: readonly number[] = [];

/**
 * Chooses routes that serve each customer exactly once at less cost than `most`, from among those met: a set partitioning problem,
 * bounded by prices of customers (Lagrange multipliers, found by subgradient steps) and searched in depth until `effort` tries are
 * spent. Returns the chosen routes, none where nothing cheaper was found. Repeatable: nothing depends on the clock.
 *
 * `routes` is the most routes that may be chosen. Sources: Held and Karp, Operations Research 18(6), 1970, for the steps; Fisher,
 * Management Science 27(1), 1981, for the bound.
 */
export function chooseRoutes(
  choice: Choice,
  customers: number,
  routes: number,
  most: number,
  effort: number,
): readonly number[] {
  const prices = new Prices(choice, customers, routes, most);
  const worthwhile = prices.worthwhile();
  if (worthwhile.length === 0) return NONE;
  return new Descent(choice, customers, routes, most, prices, worthwhile, effort).best;
}

/** A price for each customer, so that no choice costs less than the sum of the prices and the negative reduced costs. */
class Prices {
  readonly price: Float64Array;
  readonly reduced: Float64Array;
  bound = Number.NEGATIVE_INFINITY;
  private readonly choice: Choice;
  private readonly most: number;
  private readonly routes: number;

  constructor(choice: Choice, customers: number, routes: number, most: number) {
    this.choice = choice;
    this.most = most;
    this.routes = routes;
    this.reduced = new Float64Array(choice.count);
    this.price = this.first(customers);
    this.ascend(customers);
  }

  /** Routes without which the bound does not already exclude a cheaper choice, most promising first. */
  worthwhile(): Int32Array {
    const { reduced, most, bound } = this;
    const room = most - bound;
    const list: number[] = [];
    if (room <= 0) return new Int32Array(0);
    for (let route = 0; route < this.choice.count; route += 1) {
      if ((reduced[route] as number) < room) list.push(route);
    }
    list.sort((left, right) => (reduced[left] as number) - (reduced[right] as number) || left - right);
    return Int32Array.from(list.slice(0, MOST_SEARCHED));
  }

  private first(customers: number): Float64Array {
    const { count, cost, first, customers: list } = this.choice;
    const price = new Float64Array(customers + 1).fill(Number.POSITIVE_INFINITY);
    price[0] = 0;
    for (let route = 0; route < count; route += 1) {
      const [from, to] = [first[route] as number, first[route + 1] as number];
      const share = (cost[route] as number) / (to - from);
      for (let at = from; at < to; at += 1)
        price[list[at] as number] = Math.min(price[list[at] as number] as number, share);
    }
    return price;
  }

  private ascend(customers: number): void {
    const { most, price } = this;
    const slope = new Float64Array(customers + 1);
    const kept = price.slice();
    let pace = 1;
    let stale = 0;
    for (let round = 0; round < ROUNDS && pace > 1e-3; round += 1) {
      const bound = this.reckon(slope);
      stale += 1;
      if (bound > this.bound) {
        this.bound = bound;
        kept.set(price);
        stale = 0;
      } else if (stale > PATIENCE) {
        stale = 0;
        pace /= 2;
        price.set(kept);
        this.reckon(slope);
      }
      let steepness = 0;
      for (let customer = 0; customer <= customers; customer += 1) steepness += (slope[customer] as number) ** 2;
      if (steepness === 0) break;
      const step = (pace * Math.max(1e-9, most * 1.001 - bound)) / steepness;
      for (let customer = 0; customer <= customers; customer += 1) {
        price[customer] = (price[customer] as number) + step * (slope[customer] as number);
      }
      price[0] = Math.min(0, price[0] as number);
    }
    price.set(kept);
    this.bound = this.reckon(slope);
  }

  /** Reduced costs, the bound, and how often each customer is served too little by the routes of negative reduced cost. */
  private reckon(slope: Float64Array): number {
    const { price, reduced, routes } = this;
    const { count, cost, first, customers } = this.choice;
    slope.fill(1);
    slope[0] = routes;
    let bound = (price[0] as number) * routes;
    for (let customer = 1; customer < price.length; customer += 1) bound += price[customer] as number;
    for (let route = 0; route < count; route += 1) {
      const [from, to] = [first[route] as number, first[route + 1] as number];
      let left = (cost[route] as number) - (price[0] as number);
      for (let at = from; at < to; at += 1) left -= price[customers[at] as number] as number;
      reduced[route] = left;
      if (left >= 0) continue;
      bound += left;
      slope[0] = (slope[0] as number) - 1;
      for (let at = from; at < to; at += 1) {
        const customer = customers[at] as number;
        slope[customer] = (slope[customer] as number) - 1;
      }
    }
    if ((price[0] as number) === 0 && (slope[0] as number) > 0) slope[0] = 0;
    return bound;
  }
}

/** Depth-first search: the customer with the fewest routes left is served by each of them in turn. */
class Descent {
  best: readonly number[] = NONE;
  private readonly choice: Choice;
  private readonly list: Int32Array;
  private readonly prices: Prices;
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
  private readonly routes: number;
  private most: number;
  private effort: number;

  constructor(
    choice: Choice,
    customers: number,
    routes: number,
    most: number,
    prices: Prices,
    list: Int32Array,
    effort: number,
  ) {
    this.choice = choice;
    this.customers = customers;
    this.routes = routes;
    this.most = most;
    this.prices = prices;
    this.list = list;
    this.effort = effort;
    this.clashes = new Int32Array(list.length);
    this.serving = Array.from({ length: customers + 1 }, () => []);
    this.left = new Int32Array(customers + 1);
    this.served = new Uint8Array(customers + 1);
    list.forEach((route, place) => {
      this.each(route, (customer) => {
        (this.serving[customer] as number[]).push(place);
        this.left[customer] = (this.left[customer] as number) + 1;
      });
    });
    this.floor = this.floors();
    let sum = (prices.price[0] as number) * routes;
    for (let customer = 1; customer <= customers; customer += 1) sum += this.floor[customer] as number;
    this.descend(0, sum, 0);
  }

  /** What serving a customer costs at least: prices under which no route is cheaper than its customers together. */
  private floors(): Float64Array {
    const { list, prices, choice } = this;
    const { first } = choice;
    const floor = prices.price.slice();
    const slack = new Float64Array(list.length);
    list.forEach((route, place) => {
      let left = (choice.cost[route] as number) - (floor[0] as number);
      this.each(route, (customer) => {
        left -= floor[customer] as number;
      });
      slack[place] = left;
      if (left >= 0) return;
      slack[place] = 0;
      const share = left / ((first[route + 1] as number) - (first[route] as number));
      this.each(route, (customer) => {
        floor[customer] = (floor[customer] as number) + share;
      });
    });
    list.forEach((route, place) => {
      let left = (choice.cost[route] as number) - (floor[0] as number);
      this.each(route, (customer) => {
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

  private each(route: number, visit: (customer: number) => void): void {
    const { first, customers } = this.choice;
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
    if (this.chosen.length >= this.routes) return;
    const customer = this.scarcest();
    if (this.left[customer] === 0) return;
    for (const place of this.serving[customer] as number[]) {
      if (this.clashes[place] !== 0) continue;
      const route = this.list[place] as number;
      let floor = this.prices.price[0] as number;
      let more = 0;
      this.each(route, (each) => {
        floor += this.floor[each] as number;
        more += 1;
      });
      const dearer = cost + (this.choice.cost[route] as number);
      if (dearer + rest - floor >= this.most - 1e-6) continue;
      this.effort -= 1;
      if (this.effort < 0) return;
      this.chosen.push(route);
      this.mark(route, 1);
      this.descend(dearer, rest - floor, served + more);
      this.mark(route, -1);
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
  private mark(route: number, by: 1 | -1): void {
    const { clashes, serving, left, served, list } = this;
    const clear = by === 1 ? 0 : 1;
    this.each(route, (customer) => {
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
