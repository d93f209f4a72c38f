import type { Random } from '../../base/index.ts';
import { type Order, type RouteModel, type Screen, UNSCREENED } from './contract.ts';
import type { Tours } from './tours.ts';

/** Customers absent before a step that are tried in it. */
const MOST_OLD = 20;
/** With more customers to place only near positions are tried: it is quick, and routes do not sprawl from the start. */
const MOST_THOROUGH = 100;
/** Share of positions passed over at random. */
const BLINK_SHARE = 0.01;
/** Neighbours of a customer whose sides are tried first. */
const NEAR_TRIED = 40;
/** Screened, a position is tried up to where an edge as long as to the neighbour of this rank and back would not pay. */
const REACH_RANK = 8;
/** The same in a full step. */
const FULL_REACH_RANK = 40;
/** Share of full steps: every position of every route is tried; screened, every end of a route and many more neighbours. */
const FULL_SHARE = 0.15;

/** Puts absent customers back one by one, each where it adds least. */
export class Recreate {
  protected readonly tours: Tours;
  protected readonly model: RouteModel;
  private readonly random: Random;
  private readonly weights: number;
  private readonly nearTried: number;
  private readonly keys: Float64Array;
  /** Stamp of the step in which an absent customer was chosen to be tried. */
  private readonly tried: Int32Array;
  /** Whether far positions are tried where no near one is left. */
  protected thorough = true;
  private untilBlink = 0;
  private bestAfter = -1;
  private bestCost = 0;
  private bestWay = 0;
  protected limit = Number.POSITIVE_INFINITY;

  constructor(tours: Tours, random: Random) {
    this.tours = tours;
    this.model = tours.model;
    this.random = random;
    this.weights = this.model.orders.reduce((sum, each) => sum + each.weight, 0);
    this.nearTried = Math.min(this.model.nearTried ?? NEAR_TRIED, this.model.nearWidth - 1);
    this.keys = new Float64Array(tours.customers + 1);
    this.tried = new Int32Array(tours.customers + 1);
    this.drawBlink();
  }

  /**
   * Places what it can of the first `count` absent customers; the others stay in the list. Returns how many stay. Where many of the
   * first `old` were absent before, only those that are nearest to `seed` are tried. With a limit it gives up where one has no place or
   * the cost must come to the limit or more, and returns -1: the step has to be taken back.
   */
  run(absent: Int32Array, count: number, old: number, seed: number, limit = Number.POSITIVE_INFINITY): number {
    const first = old > MOST_OLD ? this.setAside(absent, count, old, seed) : 0;
    this.sort(absent, first, count);
    const thorough = old <= MOST_OLD && count <= MOST_THOROUGH;
    const full = thorough && this.random.unit() < FULL_SHARE;
    this.limit = limit;
    const bounded = limit < Number.POSITIVE_INFINITY;
    let left = first;
    for (let at = first; at < count; at += 1) {
      const customer = absent[at] as number;
      // One customer of each step is looked at everywhere: one whose neighbours are all left out would never get in.
      this.thorough = thorough || at === first;
      if (!this.place(customer, full)) {
        if (bounded) return -1;
        absent[left] = customer;
        left += 1;
      }
    }
    return left;
  }

  /** Puts one customer where it adds least; false where it can go nowhere. */
  protected place(customer: number, full: boolean): boolean {
    const { tours, model } = this;
    const { parts } = model;
    if (parts !== undefined && (tours.routeOf[customer] !== -1 || parts.spare(customer))) return true;
    parts?.begin(customer);
    this.bestAfter = -1;
    this.bestCost = this.limit - model.cost;
    this.scan(customer, full);
    this.scanEmpty(customer);
    if (parts?.place(customer, this.bestCost) === true) return this.place(customer, full);
    if (this.bestAfter < 0) return false;
    model.prepare?.(customer, this.bestAfter, this.bestWay);
    tours.insert(customer, this.bestAfter, this.bestWay);
    const route = tours.routeOf[customer] as number;
    model.renew(route);
    if (model.holds(route)) return true;
    tours.remove(customer);
    model.renew(route);
    return false;
  }

  /** Looks for the best position in the routes that are used. */
  private scan(customer: number, full: boolean): void {
    const { screen, parts } = this.model;
    if (screen === undefined) {
      if (!full) this.scanNear(customer);
      if (full || (this.thorough && this.bestAfter < 0 && parts?.enough(customer) !== true)) this.scanAll(customer);
      return;
    }
    if (!full) this.scanScreened(customer, screen, false);
    const bounded = this.limit < Number.POSITIVE_INFINITY;
    if (full || (bounded && this.bestAfter < 0 && this.looksFar())) {
      this.scanEnds(customer);
      this.scanScreened(customer, screen, true);
    }
    if (this.bestAfter < 0 && this.thorough && !bounded) this.scanAll(customer);
  }

  /** Moves the old absent customers that are not tried now to the front of the list; returns how many they are. */
  private setAside(absent: Int32Array, count: number, old: number, seed: number): number {
    const { near, nearWidth } = this.model;
    const { routeOf, stamp } = this.tours;
    const { tried } = this;
    const row = seed * nearWidth;
    let most = MOST_OLD + count - old;
    for (let rank = 0; rank < nearWidth && most > 0; rank += 1) {
      const customer = near[row + rank] as number;
      if ((routeOf[customer] as number) >= 0) continue;
      tried[customer] = stamp;
      most -= 1;
    }
    let first = 0;
    for (let at = 0; at < old; at += 1) {
      const customer = absent[at] as number;
      if (tried[customer] === stamp) continue;
      absent[at] = absent[first] as number;
      absent[first] = customer;
      first += 1;
    }
    return first;
  }

  private sort(absent: Int32Array, first: number, count: number): void {
    const { keys } = this;
    const { key: keyOf } = this.drawOrder();
    for (let at = first; at < count; at += 1) {
      const customer = absent[at] as number;
      const key = keyOf === null ? this.random.unit() : keyOf(customer);
      let to = at;
      while (to > first && (keys[to - 1] as number) > key) {
        keys[to] = keys[to - 1] as number;
        absent[to] = absent[to - 1] as number;
        to -= 1;
      }
      keys[to] = key;
      absent[to] = customer;
    }
  }

  private drawOrder(): Order {
    const { orders } = this.model;
    let draw = this.random.unit() * this.weights;
    for (const order of orders) {
      draw -= order.weight;
      if (draw < 0) return order;
    }
    return orders[0] as Order;
  }

  /** Both sides of the nearest customers that are in a route that may take this one. */
  protected scanNear(customer: number): void {
    const { model, nearTried } = this;
    const { near } = model;
    const { routeOf, prev } = this.tours;
    const row = customer * model.nearWidth;
    for (let rank = 1; rank <= nearTried; rank += 1) {
      const node = near[row + rank] as number;
      const route = routeOf[node] as number;
      if (route < 0 || !model.admits(customer, route, this.bestCost)) continue;
      this.consider(customer, node);
      this.consider(customer, prev[node] as number);
    }
  }

  /** The same, without those positions that cannot be better than the best so far. In a full step the ends of routes are done. */
  private scanScreened(customer: number, { away, into, onward }: Screen, full: boolean): void {
    const { model } = this;
    const { near } = model;
    const { routeOf, prev } = this.tours;
    const row = customer * model.nearWidth;
    const end = row + (full ? model.nearWidth - 1 : this.nearTried);
    // Once this is reached positions on still longer edges are passed over.
    const reach = away[Math.min(end, row + (full ? FULL_REACH_RANK : REACH_RANK))] as number;
    const open = full ? UNSCREENED - 1 : UNSCREENED;
    let most = wholeAbove(this.bestCost);
    for (let at = row + 1; at <= end; at += 1) {
      const apart = away[at] as number;
      if (apart - reach >= most) return;
      const node = near[at] as number;
      const before = into[node] as number;
      const after = onward[node] as number;
      if (apart - Math.max(before, after) >= most) continue;
      const route = routeOf[node] as number;
      if (route < 0 || !model.admits(customer, route, this.bestCost)) continue;
      if (after <= open && apart - after < most) this.consider(customer, node);
      if (before <= open && apart - before < most) this.consider(customer, prev[node] as number);
      most = wholeAbove(this.bestCost);
    }
  }

  /** The first and the last position of every route that may take it. */
  private scanEnds(customer: number): void {
    const { model, tours } = this;
    const { inUse, used, prev } = tours;
    for (let at = 0; at < used; at += 1) {
      const route = inUse[at] as number;
      if (!model.admits(customer, route, this.bestCost)) continue;
      const sentinel = tours.sentinel(route);
      this.consider(customer, sentinel);
      this.consider(customer, prev[sentinel] as number);
    }
  }

  /** Every position of every route that may take it. */
  protected scanAll(customer: number): void {
    const { model, tours } = this;
    const { inUse, used, next } = tours;
    for (let at = 0; at < used; at += 1) {
      const route = inUse[at] as number;
      if (!model.admits(customer, route, this.bestCost)) continue;
      const sentinel = tours.sentinel(route);
      let node = sentinel;
      do {
        this.consider(customer, node);
        node = next[node] as number;
      } while (node !== sentinel);
    }
  }

  protected scanEmpty(customer: number): void {
    const { model, tours } = this;
    for (let kind = 0; kind < tours.kinds; kind += 1) {
      const route = tours.emptyRoute(kind);
      if (route >= 0 && model.admits(customer, route, this.bestCost)) this.consider(customer, tours.sentinel(route));
    }
  }

  /** Keeps a position that is better than the best so far, unless it is passed over by chance. */
  protected consider(customer: number, after: number): void {
    const { model, tours } = this;
    const bound = model.bound(customer, after);
    if (bound >= this.bestCost || this.blinks()) return;
    if (tours.fixed[tours.next[after] as number] === 1) return;
    const price = model.price(customer, after, bound);
    if (price >= this.bestCost) return;
    this.bestCost = price;
    this.bestAfter = after;
    this.bestWay = model.way;
  }

  /** Whether far positions are looked at where no near one costs little enough. */
  private looksFar(): boolean {
    const { farShare } = this.model;
    return farShare === undefined || this.random.unit() < farShare;
  }

  /** Whether a position is passed over by chance. */
  protected blinks(): boolean {
    this.untilBlink -= 1;
    if (this.untilBlink >= 0) return false;
    this.drawBlink();
    return true;
  }

  private drawBlink(): void {
    this.untilBlink = Math.floor(Math.log(1 - this.random.unit()) / Math.log(1 - BLINK_SHARE));
  }
}

/** The smallest whole number that is no smaller, so that the screen reckons in whole numbers alone. */
function wholeAbove(cost: number): number {
  return cost < UNSCREENED ? Math.ceil(cost) | 0 : UNSCREENED;
}
