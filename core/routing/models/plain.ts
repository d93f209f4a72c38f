import type { Order, RouteModel, Tours } from '../engine/index.ts';
import { nearness } from './neighbours.ts';
import type { RoutingProblem } from './types.ts';

/** Temperatures that suit one capacity, windows and lengths, found on public instances. */
const HEAT = { start: 0.7, end: 0.003 };

/**
 * Like vehicles with one capacity from one depot; with windows or a longest route where the problem has them. Costs are integers.
 *
 * With windows each node carries the earliest departure that its forerunners allow and the latest arrival that its followers allow,
 * so that an insertion is tested in O(1).
 */
export class PlainModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly heat = HEAT;
  cost = 0;
  readonly way = 0;
  private readonly problem: RoutingProblem;
  private readonly width: number;
  private readonly limited: boolean;
  /** The cost matrix, and the same turned over: [to * (n + 1) + from], so that what lies around one customer lies together. */
  private readonly matrix: Int32Array;
  private readonly back: Int32Array;
  /** Row of the node in the matrices: its own number, 0 for sentinels. */
  private readonly place: Int32Array;
  /** Cost from each node to its follower. */
  private readonly edge: Int32Array;
  private readonly load: Int32Array;
  /** Cost of each route with its service times. */
  private readonly length: Float64Array;
  /** Earliest departure from each node; the depot's opening for sentinels. */
  private readonly departs: Float64Array;
  /** Latest arrival at each node; the depot's closing for sentinels. */
  private readonly latest: Float64Array;
  private next: Int32Array = new Int32Array(0);
  private prev: Int32Array = new Int32Array(0);
  private routeOf: Int32Array = new Int32Array(0);
  private used = () => 0;

  constructor(problem: RoutingProblem) {
    const { customers, vehicles, windows } = problem;
    const total = customers + 1 + vehicles;
    this.problem = problem;
    this.customers = customers;
    this.width = customers + 1;
    this.kindOf = new Int32Array(vehicles);
    ({ near: this.near, nearWidth: this.nearWidth } = nearness(problem));
    this.orders = ordersOf(problem);
    this.limited = windows !== null || Number.isFinite(problem.mostLength);
    this.matrix = problem.cost;
    this.back = turned(problem.cost, customers + 1);
    this.place = new Int32Array(total);
    for (let customer = 1; customer <= customers; customer += 1) this.place[customer] = customer;
    this.edge = new Int32Array(total);
    this.load = new Int32Array(vehicles);
    this.length = new Float64Array(vehicles);
    this.departs = new Float64Array(total).fill(windows?.open[0] ?? 0);
    this.latest = new Float64Array(total).fill(windows?.close[0] ?? Number.POSITIVE_INFINITY);
  }

  bind(tours: Tours): void {
    this.next = tours.next;
    this.prev = tours.prev;
    this.routeOf = tours.routeOf;
    this.used = () => tours.used;
  }

  linked(customer: number, after: number, before: number, route: number): void {
    const { edge, load, length, problem } = this;
    const row = customer * this.width;
    const reach = this.back[row + (this.place[after] as number)] as number;
    const leave = this.matrix[row + (this.place[before] as number)] as number;
    const more = reach + leave - (edge[after] as number);
    this.cost += more;
    length[route] = (length[route] as number) + more + (problem.service[customer] as number);
    load[route] = (load[route] as number) + (problem.demand[customer] as number);
    edge[after] = reach;
    edge[customer] = leave;
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    const { edge, load, length, problem } = this;
    const to = this.place[before] as number;
    const direct = this.matrix[(this.place[after] as number) * this.width + to] as number;
    const less = (edge[after] as number) + (edge[customer] as number) - direct;
    this.cost -= less;
    length[route] = (length[route] as number) - less - (problem.service[customer] as number);
    load[route] = (load[route] as number) - (problem.demand[customer] as number);
    edge[after] = direct;
  }

  renew(route: number): void {
    const { windows, time, service } = this.problem;
    if (windows === null) return;
    const { next, prev, place, departs, latest, width } = this;
    const sentinel = this.customers + 1 + route;
    let before = sentinel;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const arrival = (departs[before] as number) + (time[(place[before] as number) * width + node] as number);
      departs[node] = Math.max(arrival, windows.open[node] as number) + (service[node] as number);
      before = node;
    }
    let after = sentinel;
    for (let node = prev[sentinel] as number; node !== sentinel; node = prev[node] as number) {
      const leave = (latest[after] as number) - (time[node * width + (place[after] as number)] as number);
      latest[node] = Math.min(leave - (service[node] as number), windows.close[node] as number);
      after = node;
    }
  }

  /** What `admits` and `price` let in can be driven. */
  holds(): boolean {
    return true;
  }

  admits(customer: number, route: number): boolean {
    return (this.load[route] as number) + (this.problem.demand[customer] as number) <= this.problem.capacity;
  }

  bound(customer: number, after: number): number {
    const row = customer * this.width;
    const { place } = this;
    const reach = this.back[row + (place[after] as number)] as number;
    const leave = this.matrix[row + (place[this.next[after] as number] as number)] as number;
    return reach + leave - (this.edge[after] as number);
  }

  price(customer: number, after: number, bound: number): number {
    return this.limited && !this.fits(customer, after, bound) ? Number.POSITIVE_INFINITY : bound;
  }

  meanEdge(): number {
    let placed = 0;
    for (let customer = 1; customer <= this.customers; customer += 1) {
      if ((this.routeOf[customer] as number) >= 0) placed += 1;
    }
    return this.cost / Math.max(1, placed + this.used());
  }

  /** Whether the route stays within its length and every window in time. */
  private fits(customer: number, after: number, added: number): boolean {
    const { windows, time, service, mostLength } = this.problem;
    const route = this.routeOf[after] as number;
    if ((this.length[route] as number) + added + (service[customer] as number) > mostLength) return false;
    if (windows === null) return true;
    const before = this.next[after] as number;
    const arrival =
      (this.departs[after] as number) + (time[(this.place[after] as number) * this.width + customer] as number);
    if (arrival > (windows.close[customer] as number)) return false;
    const start = Math.max(arrival, windows.open[customer] as number);
    const leave = start + (service[customer] as number);
    const onward = leave + (time[customer * this.width + (this.place[before] as number)] as number);
    return onward <= (this.latest[before] as number);
  }
}

function ordersOf({ demand, cost, windows }: RoutingProblem): readonly Order[] {
  const orders: readonly Order[] = [
    { weight: 4, key: null },
    { weight: 4, key: (customer) => -(demand[customer] as number) },
    { weight: 2, key: (customer) => -(cost[customer] as number) },
    { weight: 1, key: (customer) => cost[customer] as number },
  ];
  if (windows === null) return orders;
  const { open, close } = windows;
  return [
    ...orders,
    { weight: 2, key: (customer) => (close[customer] as number) - (open[customer] as number) },
    { weight: 2, key: (customer) => open[customer] as number },
    { weight: 2, key: (customer) => -(close[customer] as number) },
  ];
}

function turned(cost: Int32Array, width: number): Int32Array {
  const back = new Int32Array(width * width);
  let symmetric = true;
  for (let from = 0; from < width; from += 1) {
    for (let to = 0; to < width; to += 1) {
      const each = cost[from * width + to] as number;
      back[to * width + from] = each;
      if (each !== cost[to * width + from]) symmetric = false;
    }
  }
  return symmetric ? cost : back;
}
