import { type Order, type RouteModel, type Screen, type Tours, UNSCREENED } from '../engine/index.ts';
import { awayOf, turned } from './edges.ts';
import { meanEdgeOf, USUAL_HEAT } from './heat.ts';
import { nearness } from './neighbours.ts';
import { ordersOf } from './orders.ts';
import { Overload } from './overload.ts';
import type { RoutingProblem } from './types.ts';

/**
 * Problems of up to so many customers end warmer, as below that hardly a step changes anything, and carry too much on the way. Larger
 * ones have too few steps for each customer to gain by either.
 */
const SMALL = 250;
const SMALL_END = 0.01;

/**
 * Like vehicles with one capacity from one depot; with windows or a longest route where the problem has them. Costs are integers.
 *
 * With windows each node carries the earliest departure that its forerunners allow and the latest arrival that its followers allow,
 * so that an insertion is tested in O(1).
 *
 * Once every customer of a small problem has its place, routes may carry a little too much on the way. See `Overload`.
 */
export class PlainModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly heat: { readonly start: number; readonly end: number };
  readonly growing = true;
  cost = 0;
  readonly way = 0;
  private readonly mostLength: number;
  private readonly width: number;
  private readonly limited: boolean;
  /** The cost matrix, and the same turned over: [to * (n + 1) + from], so that what lies around one customer lies together. */
  private readonly matrix: Int32Array;
  private readonly back: Int32Array;
  private readonly time: Int32Array;
  private readonly timed: boolean;
  private readonly open: Int32Array;
  private readonly close: Int32Array;
  readonly screen: Screen;
  private readonly into: Int32Array;
  private readonly onward: Int32Array;
  private readonly service: Int32Array;
  private readonly demand: Int32Array;
  /** Cost from each node to its follower. */
  private readonly edge: Int32Array;
  private readonly overload: Overload;
  /** Cost of each route with its service times. */
  private readonly length: Float64Array;
  /** Earliest departure from each node; the depot's opening for sentinels. */
  private readonly departs: Int32Array;
  /** Latest arrival at each node; the depot's closing for sentinels. */
  private readonly latest: Int32Array;
  private next: Int32Array = new Int32Array(0);
  private prev: Int32Array = new Int32Array(0);
  private routeOf: Int32Array = new Int32Array(0);
  private tours!: Tours;

  constructor(problem: RoutingProblem) {
    const { customers, vehicles, windows } = problem;
    const total = customers + 1 + vehicles;
    this.customers = customers;
    this.heat = customers > SMALL ? USUAL_HEAT : { start: USUAL_HEAT.start, end: SMALL_END };
    this.width = customers + 1;
    this.kindOf = new Int32Array(vehicles);
    ({ near: this.near, nearWidth: this.nearWidth } = nearness(problem));
    this.orders = ordersOf(problem);
    this.limited = windows !== null || Number.isFinite(problem.mostLength);
    this.matrix = problem.cost;
    this.back = turned(problem.cost, customers + 1);
    this.time = problem.time;
    this.timed = windows !== null;
    this.open = windows?.open ?? new Int32Array(0);
    this.close = windows?.close ?? new Int32Array(0);
    this.mostLength = problem.mostLength;
    this.edge = new Int32Array(total);
    this.demand = problem.demand;
    this.overload = new Overload(problem.capacity, problem.demand, vehicles);
    this.service = problem.service;
    this.into = new Int32Array(total).fill(-UNSCREENED);
    this.onward = new Int32Array(total).fill(-UNSCREENED);
    this.screen = { away: awayOf(this, this.matrix, this.back, 1), into: this.into, onward: this.onward };
    this.length = new Float64Array(vehicles);
    this.departs = new Int32Array(total).fill(windows?.open[0] ?? 0);
    this.latest = new Int32Array(total).fill(windows?.close[0] ?? 0);
  }

  bind(tours: Tours): void {
    this.next = tours.next;
    this.prev = tours.prev;
    this.routeOf = tours.routeOf;
    this.tours = tours;
  }

  linked(customer: number, after: number, before: number, route: number): void {
    const { customers, edge, length, into, onward } = this;
    const row = customer * this.width;
    const reach = this.back[after > customers ? row : row + after] as number;
    const leave = this.matrix[before > customers ? row : row + before] as number;
    const more = reach + leave - (edge[after] as number);
    this.cost += more + this.overload.carry(route, this.demand[customer] as number);
    length[route] = (length[route] as number) + more + (this.service[customer] as number);
    edge[after] = reach;
    edge[customer] = leave;
    into[customer] = after > customers ? UNSCREENED : reach;
    onward[customer] = before > customers ? UNSCREENED : leave;
    if (after <= customers) onward[after] = reach;
    if (before <= customers) into[before] = leave;
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    const { customers, edge, length, into, onward } = this;
    const row = after > customers ? 0 : after * this.width;
    const direct = this.matrix[before > customers ? row : row + before] as number;
    const less = (edge[after] as number) + (edge[customer] as number) - direct;
    this.cost += this.overload.carry(route, -(this.demand[customer] as number)) - less;
    length[route] = (length[route] as number) - less - (this.service[customer] as number);
    edge[after] = direct;
    into[customer] = -UNSCREENED;
    onward[customer] = -UNSCREENED;
    if (after <= customers) onward[after] = before > customers ? UNSCREENED : direct;
    if (before <= customers) into[before] = after > customers ? UNSCREENED : direct;
  }

  get excess(): number {
    return this.overload.excess;
  }

  ease(phase: number): void {
    // Where not all have a place, none of the routes that serve more of them might ever be within their capacity.
    if (this.customers > SMALL || this.tours.placed < this.customers) return;
    this.cost += this.overload.look(phase, this.meanEdge());
  }

  renew(route: number): void {
    if (!this.timed) return;
    const { next, prev, departs, latest, open, close, time, service, width, customers } = this;
    const sentinel = customers + 1 + route;
    let departure = departs[sentinel] as number;
    let row = 0;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const arrival = departure + (time[row + node] as number);
      departure = Math.max(arrival, open[node] as number) + (service[node] as number);
      departs[node] = departure;
      row = node * width;
    }
    let arrival = latest[sentinel] as number;
    let to = 0;
    for (let node = prev[sentinel] as number; node !== sentinel; node = prev[node] as number) {
      const leave = arrival - (time[node * width + to] as number);
      arrival = Math.min(leave - (service[node] as number), close[node] as number);
      latest[node] = arrival;
      to = node;
    }
  }

  /** What `admits` and `price` let in can be driven. */
  holds(): boolean {
    return true;
  }

  admits(customer: number, route: number): boolean {
    return (this.overload.load[route] as number) + (this.demand[customer] as number) <= this.overload.most;
  }

  bound(customer: number, after: number): number {
    const { customers } = this;
    const row = customer * this.width;
    const before = this.next[after] as number;
    const reach = this.back[after > customers ? row : row + after] as number;
    const leave = this.matrix[before > customers ? row : row + before] as number;
    return reach + leave - (this.edge[after] as number);
  }

  price(customer: number, after: number, bound: number): number {
    if (this.limited && !this.fits(customer, after, bound)) return Number.POSITIVE_INFINITY;
    return bound + this.overload.extra(this.routeOf[after] as number, this.demand[customer] as number);
  }

  costOf(route: number): number {
    const { edge, next, customers } = this;
    const sentinel = customers + 1 + route;
    let sum = edge[sentinel] as number;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number)
      sum += edge[node] as number;
    return sum;
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours, this.cost);
  }

  /** Whether the route stays within its length and every window in time. */
  private fits(customer: number, after: number, added: number): boolean {
    const { time, service, customers, width } = this;
    const route = this.routeOf[after] as number;
    if ((this.length[route] as number) + added + (service[customer] as number) > this.mostLength) return false;
    if (!this.timed) return true;
    const before = this.next[after] as number;
    const row = after > customers ? 0 : after * width;
    const arrival = (this.departs[after] as number) + (time[row + customer] as number);
    if (arrival > (this.close[customer] as number)) return false;
    const leave = Math.max(arrival, this.open[customer] as number) + (service[customer] as number);
    const onward = leave + (time[customer * width + (before > customers ? 0 : before)] as number);
    return onward <= (this.latest[before] as number);
  }
}
