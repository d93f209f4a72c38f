import type { Random } from '../base/index.ts';
import type { Tours } from './tours.ts';

/** Share of positions passed over at random. */
const BLINK_SHARE = 0.01;
/** Neighbours of a customer whose sides are tried first. */
const NEAR_TRIED = 40;
/** Share of steps in which every position of every route is tried. */
const FULL_SHARE = 0.15;

type Order = { readonly weight: number; readonly needsWindows: boolean; readonly key: (customer: number) => number };

/** Puts absent customers back one by one, each where it adds least. */
export class Recreate {
  private readonly tours: Tours;
  private readonly near: Int32Array;
  private readonly random: Random;
  private readonly orders: readonly Order[];
  private readonly weights: number;
  private readonly nearTried: number;
  private readonly limited: boolean;
  private readonly keys: Float64Array;
  private untilBlink = 0;
  private bestAfter = -1;
  private bestCost = 0;

  constructor(tours: Tours, near: Int32Array, random: Random) {
    const { demand, cost, windows, customers, mostLength } = tours.problem;
    const open = windows?.open ?? demand;
    const close = windows?.close ?? demand;
    const orders: readonly Order[] = [
      { weight: 4, needsWindows: false, key: () => random.unit() },
      { weight: 4, needsWindows: false, key: (customer) => -(demand[customer] as number) },
      { weight: 2, needsWindows: false, key: (customer) => -(cost[customer] as number) },
      { weight: 1, needsWindows: false, key: (customer) => cost[customer] as number },
      { weight: 2, needsWindows: true, key: (customer) => (close[customer] as number) - (open[customer] as number) },
      { weight: 2, needsWindows: true, key: (customer) => open[customer] as number },
      { weight: 2, needsWindows: true, key: (customer) => -(close[customer] as number) },
    ];
    this.tours = tours;
    this.near = near;
    this.random = random;
    this.orders = orders.filter((each) => windows !== null || !each.needsWindows);
    this.weights = this.orders.reduce((sum, each) => sum + each.weight, 0);
    this.limited = windows !== null || Number.isFinite(mostLength);
    this.nearTried = Math.min(NEAR_TRIED, customers - 1);
    this.keys = new Float64Array(customers + 1);
    this.drawBlink();
  }

  /** Places what it can of the first `count` absent customers; the others stay in the list. Returns how many stay. */
  run(absent: Int32Array, count: number): number {
    this.sort(absent, count);
    const full = this.random.unit() < FULL_SHARE;
    let left = 0;
    for (let at = 0; at < count; at += 1) {
      const customer = absent[at] as number;
      this.bestAfter = -1;
      this.bestCost = Number.POSITIVE_INFINITY;
      if (!full) this.scanNear(customer);
      if (full || this.bestAfter < 0) this.scanAll(customer);
      this.tryEmptyRoute(customer);
      if (this.bestAfter < 0) {
        absent[left] = customer;
        left += 1;
      } else {
        this.tours.insert(customer, this.bestAfter);
        this.tours.relabel(this.tours.routeOf[customer] as number);
      }
    }
    return left;
  }

  private sort(absent: Int32Array, count: number): void {
    let draw = this.random.unit() * this.weights;
    let order = this.orders[0] as Order;
    for (const each of this.orders) {
      order = each;
      draw -= each.weight;
      if (draw < 0) break;
    }
    const { keys } = this;
    for (let at = 0; at < count; at += 1) {
      const customer = absent[at] as number;
      const key = order.key(customer);
      let to = at;
      while (to > 0 && (keys[to - 1] as number) > key) {
        keys[to] = keys[to - 1] as number;
        absent[to] = absent[to - 1] as number;
        to -= 1;
      }
      keys[to] = key;
      absent[to] = customer;
    }
  }

  /** Both sides of the nearest customers that are in a route with room. */
  private scanNear(customer: number): void {
    const { near, nearTried } = this;
    const { routeOf, load, next, prev, place, edge, back, problem } = this.tours;
    const { cost, demand, capacity, customers } = problem;
    const row = customer * (customers + 1);
    const room = capacity - (demand[customer] as number);
    for (let rank = 1; rank <= nearTried; rank += 1) {
      const node = near[row + rank] as number;
      const route = routeOf[node] as number;
      if (route < 0 || (load[route] as number) > room) continue;
      const onward = cost[row + (place[next[node] as number] as number)] as number;
      const behind = (back[row + node] as number) + onward - (edge[node] as number);
      if (behind < this.bestCost) this.take(customer, node, behind);
      const before = prev[node] as number;
      const reach = back[row + (place[before] as number)] as number;
      const ahead = reach + (cost[row + node] as number) - (edge[before] as number);
      if (ahead < this.bestCost) this.take(customer, before, ahead);
    }
  }

  /** Every position of every route with room. */
  private scanAll(customer: number): void {
    const { next, load, size, place, nodes, edge, back, problem } = this.tours;
    const { cost, demand, capacity, customers, vehicles } = problem;
    const row = customer * (customers + 1);
    const room = capacity - (demand[customer] as number);
    for (let route = 0; route < vehicles; route += 1) {
      if (size[route] === 0 || (load[route] as number) > room) continue;
      const sentinel = nodes + route;
      let node = sentinel;
      let reach = back[row] as number;
      do {
        const follower = next[node] as number;
        const to = place[follower] as number;
        const added = reach + (cost[row + to] as number) - (edge[node] as number);
        if (added < this.bestCost) this.take(customer, node, added);
        node = follower;
        reach = back[row + to] as number;
      } while (node !== sentinel);
    }
  }

  private tryEmptyRoute(customer: number): void {
    const { tours } = this;
    const route = tours.emptyRoute();
    if (route < 0 || (tours.problem.demand[customer] as number) > tours.problem.capacity) return;
    const added = tours.added(customer, tours.nodes + route);
    if (added < this.bestCost) this.take(customer, tours.nodes + route, added);
  }

  /** Takes a position that is better than the best so far, unless it is passed over by chance or out of time. */
  private take(customer: number, after: number, added: number): void {
    if (this.untilBlink === 0) {
      this.drawBlink();
      return;
    }
    this.untilBlink -= 1;
    if (this.limited && !this.fits(customer, after, added)) return;
    this.bestCost = added;
    this.bestAfter = after;
  }

  /** Whether the route stays within its length and every window in time. */
  private fits(customer: number, after: number, added: number): boolean {
    const { tours } = this;
    const { windows, time, service, customers, mostLength } = tours.problem;
    const route = tours.routeOf[after] as number;
    if ((tours.length[route] as number) + added + (service[customer] as number) > mostLength) return false;
    if (windows === null) return true;
    const width = customers + 1;
    const before = tours.next[after] as number;
    const arrival =
      (tours.departs[after] as number) + (time[(tours.place[after] as number) * width + customer] as number);
    if (arrival > (windows.close[customer] as number)) return false;
    const start = Math.max(arrival, windows.open[customer] as number);
    const leave = start + (service[customer] as number);
    const onward = leave + (time[customer * width + (tours.place[before] as number)] as number);
    return onward <= (tours.latest[before] as number);
  }

  private drawBlink(): void {
    this.untilBlink = Math.floor(Math.log(1 - this.random.unit()) / Math.log(1 - BLINK_SHARE));
  }
}
