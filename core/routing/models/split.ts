import type { Order, Parts, RouteModel, Tours } from '../engine/index.ts';
import { meanEdgeOf, USUAL_HEAT } from './heat.ts';
import { nearness } from './neighbours.ts';
import { Offers } from './offers.ts';
import { SplitPool } from './split-pool.ts';
import type { RoutingProblem } from './types.ts';

/** Routes that may share one customer, beyond the fewest that its demand needs. */
const SPARE_PARTS = 4;
/** Neighbouring customers whose routes are tried first. */
const NEAR_CUSTOMERS = 40;
/** Neighbouring parts that are kept for each part, at most. */
const MOST_NEAR = 400;
/** In place of a position, where the route serves the customer already. */
const GROWS = -1;

/**
 * Like vehicles with one capacity from one depot, where a customer may be served by several routes. Costs and amounts are integers.
 *
 * Each customer has a few nodes, its parts; the way of a part is the amount that it brings. A customer goes where all that it
 * misses fits, or in parts to two or more routes that have room for it together, whichever adds less; what a route brings already
 * grows at no cost. `cost` must obey the triangle inequality, or nearly so, for that to be any good.
 */
export class SplitModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly nearTried: number;
  readonly orders: readonly Order[];
  readonly heat = USUAL_HEAT;
  readonly parts: Parts;
  cost = 0;
  way = 0;
  /** Customer of each part; 0 for sentinels. */
  readonly place: Int32Array;
  private readonly width: number;
  private readonly matrix: Int32Array;
  readonly capacity: number;
  readonly load: Int32Array;
  /** What no route brings yet to each customer. */
  readonly missing: Int32Array;
  /** First part of each customer; its last lies before the first of the next. */
  readonly firstPart: Int32Array;
  private readonly offers: Offers;
  /** Room of each route, passed-on amounts included, where it was reckoned for the customer at hand. */
  private readonly pooled: Int32Array;
  private readonly pooledAt: Int32Array;
  /** Parts of the customer at hand that are in no route. */
  private readonly idle: number[] = [];
  /** Customers asked for so far. */
  private asked = 0;
  private tours: Tours | undefined;
  private pool: SplitPool | undefined;
  private next: Int32Array = new Int32Array(0);
  private routeOf: Int32Array = new Int32Array(0);
  private amount: Int32Array = new Int32Array(0);

  constructor(problem: RoutingProblem) {
    const { customers, vehicles, demand, capacity, cost } = problem;
    this.width = customers + 1;
    this.matrix = cost;
    this.capacity = capacity;
    this.missing = demand.slice();
    this.kindOf = new Int32Array(vehicles);
    this.load = new Int32Array(vehicles);
    this.firstPart = firstParts(problem);
    const last = (this.firstPart[customers + 1] as number) - 1;
    this.customers = last;
    this.place = new Int32Array(last + 1 + vehicles);
    for (let customer = 1; customer <= customers; customer += 1) {
      this.place.fill(customer, this.firstPart[customer], this.firstPart[customer + 1]);
    }
    this.nearWidth = Math.min(last, MOST_NEAR);
    this.near = nearParts(problem, this.place, this.firstPart, this.nearWidth);
    this.nearTried = Math.ceil((NEAR_CUSTOMERS * last) / Math.max(1, customers));
    const { place, missing } = this;
    this.orders = [
      { weight: 4, key: null },
      { weight: 4, key: (part) => -(missing[place[part] as number] as number) },
      { weight: 2, key: (part) => -(cost[place[part] as number] as number) },
      { weight: 1, key: (part) => cost[place[part] as number] as number },
    ];
    this.offers = new Offers(vehicles);
    this.pooled = new Int32Array(vehicles);
    this.pooledAt = new Int32Array(vehicles);
    this.parts = {
      spare: (part) => missing[place[part] as number] === 0,
      begin: (part) => this.begin(place[part] as number),
      enough: (part) => this.offers.totalRoom() >= (missing[place[part] as number] as number),
      place: (part, most) => this.placeParts(part, most),
    };
  }

  bind(tours: Tours): void {
    this.tours = tours;
    this.next = tours.next;
    this.routeOf = tours.routeOf;
    this.amount = tours.way;
    this.pool = new SplitPool(tours, this);
  }

  linked(part: number, after: number, before: number, route: number): void {
    this.cost += this.detour(part, after, before);
    this.bring(part, route, this.amount[part] as number);
    this.pool?.linked(part, route);
  }

  unlinked(part: number, after: number, before: number, route: number): void {
    this.cost -= this.detour(part, after, before);
    this.bring(part, route, -(this.amount[part] as number));
    this.pool?.unlinked(part, route);
  }

  restore(part: number, amount: number): void {
    this.pool?.restore(part, amount);
  }

  /** Nothing is kept along a route. */
  renew(): void {}

  holds(): boolean {
    return true;
  }

  admits(part: number, route: number): boolean {
    if (this.pool?.mayHaveRoom(route) !== true) return false;
    const customer = this.place[part] as number;
    const end = this.firstPart[customer + 1] as number;
    for (let each = this.firstPart[customer] as number; each < end; each += 1) {
      if (this.routeOf[each] === route) return false;
    }
    return true;
  }

  bound(part: number, after: number): number {
    return this.detour(part, after, this.next[after] as number);
  }

  /** Infinite where not all of it fits; the position is then kept as an offer for a part of it. */
  price(part: number, after: number, bound: number): number {
    const route = this.routeOf[after] as number;
    const customer = this.place[part] as number;
    const need = this.missing[customer] as number;
    this.way = need;
    if (this.capacity - (this.load[route] as number) >= need) return bound;
    if (this.pooledAt[route] !== this.asked) {
      this.pooledAt[route] = this.asked;
      this.pooled[route] = this.pool?.room(route, customer) ?? 0;
    }
    const room = this.pooled[route] as number;
    if (room > 0) this.offers.take(route, bound, after, room);
    return Number.POSITIVE_INFINITY;
  }

  settle(): void {
    this.pool?.dropEmpty();
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours as Tours, this.cost);
  }

  private detour(part: number, after: number, before: number): number {
    const { place, matrix, width } = this;
    const here = place[part] as number;
    const from = (place[after] as number) * width;
    const to = place[before] as number;
    return (matrix[from + here] as number) + (matrix[here * width + to] as number) - (matrix[from + to] as number);
  }

  private bring(part: number, route: number, amount: number): void {
    const customer = this.place[part] as number;
    this.load[route] = (this.load[route] as number) + amount;
    this.missing[customer] = (this.missing[customer] as number) - amount;
  }

  /** Routes that serve the customer already offer their room at no cost. */
  private begin(customer: number): void {
    const { offers, routeOf } = this;
    this.pool?.begin();
    offers.clear();
    this.asked += 1;
    const end = this.firstPart[customer + 1] as number;
    for (let part = this.firstPart[customer] as number; part < end; part += 1) {
      const route = routeOf[part] as number;
      if (route < 0 || this.tours?.fixed[part] === 1) continue;
      const room = this.pool?.room(route, customer) ?? 0;
      if (room > 0) offers.take(route, 0, GROWS, room);
    }
  }

  private placeParts(atHand: number, most: number): boolean {
    const { offers } = this;
    const customer = this.place[atHand] as number;
    const need = this.missing[customer] as number;
    if (need > this.capacity) return this.fillRoute(atHand);
    this.listIdle(customer, atHand);
    if (!offers.choose(need, most, this.idle.length)) return false;
    offers.chosen.forEach((route, at) => {
      this.give(customer, route, offers.positionIn(route), offers.amounts[at] as number);
    });
    return (this.missing[customer] as number) < need;
  }

  /** Of more than one route can carry, a whole load has a route of its own. */
  private fillRoute(atHand: number): boolean {
    const tours = this.tours as Tours;
    const route = tours.emptyRoute(0);
    this.listIdle(this.place[atHand] as number, atHand);
    const part = this.idle.pop();
    if (route < 0 || part === undefined) return false;
    tours.insert(part, tours.sentinel(route), this.capacity);
    return true;
  }

  /** Brings an amount by a route, or as much of it as there is room for in the end. */
  private give(customer: number, route: number, position: number, amount: number): void {
    const { routeOf, load, capacity, pool } = this;
    if (amount === 0) return;
    pool?.make(route, amount, customer);
    const given = Math.min(amount, capacity - (load[route] as number));
    if (given <= 0) return;
    if (position !== GROWS) {
      this.tours?.insert(this.idle.pop() as number, position, given);
      return;
    }
    let part = this.firstPart[customer] as number;
    while (routeOf[part] !== route) part += 1;
    pool?.setAmount(part, (this.amount[part] as number) + given);
  }

  /** The part at hand itself stays free, as it may be asked for again. */
  private listIdle(customer: number, atHand: number): void {
    this.idle.length = 0;
    const end = this.firstPart[customer + 1] as number;
    for (let part = this.firstPart[customer] as number; part < end; part += 1) {
      if (part !== atHand && this.routeOf[part] === -1) this.idle.push(part);
    }
  }
}

function firstParts({ customers, demand, capacity }: RoutingProblem): Int32Array {
  const first = new Int32Array(customers + 2).fill(1);
  for (let customer = 1; customer <= customers; customer += 1) {
    const fewest = Math.max(1, Math.ceil((demand[customer] as number) / capacity));
    first[customer + 1] = (first[customer] as number) + fewest + SPARE_PARTS;
  }
  return first;
}

/** All parts of the nearest customers, those of the customer itself first. */
function nearParts(problem: RoutingProblem, place: Int32Array, firstPart: Int32Array, nearWidth: number): Int32Array {
  const last = (firstPart[problem.customers + 1] as number) - 1;
  const customers = nearness(problem);
  const near = new Int32Array((last + 1) * nearWidth);
  for (let part = 1; part <= last; part += 1) {
    const row = (place[part] as number) * customers.nearWidth;
    let count = 0;
    for (let rank = 0; rank < customers.nearWidth && count < nearWidth; rank += 1) {
      const other = customers.near[row + rank] as number;
      const end = firstPart[other + 1] as number;
      for (let each = firstPart[other] as number; each < end && count < nearWidth; each += 1) {
        near[part * nearWidth + count] = each;
        count += 1;
      }
    }
  }
  return near;
}
