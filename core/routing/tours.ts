import type { RoutingProblem } from './types.ts';

const REMOVED = 0;
const INSERTED = 1;
const PER_ENTRY = 3;

/**
 * Routes as linked lists on typed arrays. Nodes 1 to n are customers; node n + 1 + r is the sentinel of route r, its depot at both
 * ends. Every change is logged, so that a step can be taken back without copying.
 *
 * With windows each node carries the earliest departure that its forerunners allow and the latest arrival that its followers allow,
 * so that an insertion is tested in O(1).
 */
export class Tours {
  readonly problem: RoutingProblem;
  readonly nodes: number;
  readonly next: Int32Array;
  readonly prev: Int32Array;
  /** Row of the node in the matrices: its own number, 0 for sentinels. */
  readonly place: Int32Array;
  /** Cost from each node to its follower. */
  readonly edge: Int32Array;
  /** The cost matrix turned over: [to * (n + 1) + from], so that what lies around one customer lies together. */
  readonly back: Int32Array;
  /** -1 while the customer is in no route. */
  readonly routeOf: Int32Array;
  readonly load: Int32Array;
  readonly size: Int32Array;
  /** Cost of each route with its service times. */
  readonly length: Float64Array;
  /** Earliest departure from each node; the depot's opening for sentinels. */
  readonly departs: Float64Array;
  /** Latest arrival at each node; the depot's closing for sentinels. */
  readonly latest: Float64Array;
  cost = 0;
  /** Routes with at least one customer. */
  used = 0;
  private readonly width: number;
  private readonly log: Int32Array;
  private logged = 0;
  private readonly unused: Int32Array;
  private unusedCount: number;

  constructor(problem: RoutingProblem) {
    const { customers, vehicles, windows } = problem;
    const total = customers + 1 + vehicles;
    this.problem = problem;
    this.nodes = customers + 1;
    this.width = customers + 1;
    this.next = new Int32Array(total);
    this.prev = new Int32Array(total);
    this.place = new Int32Array(total);
    this.edge = new Int32Array(total);
    this.back = turned(problem.cost, customers + 1);
    this.routeOf = new Int32Array(total).fill(-1);
    this.load = new Int32Array(vehicles);
    this.size = new Int32Array(vehicles);
    this.length = new Float64Array(vehicles);
    this.departs = new Float64Array(total).fill(windows?.open[0] ?? 0);
    this.latest = new Float64Array(total).fill(windows?.close[0] ?? Number.POSITIVE_INFINITY);
    this.log = new Int32Array(PER_ENTRY * (4 * customers + 8));
    this.unused = new Int32Array(vehicles);
    this.unusedCount = vehicles;
    for (let customer = 1; customer <= customers; customer += 1) this.place[customer] = customer;
    for (let route = 0; route < vehicles; route += 1) {
      const sentinel = this.nodes + route;
      this.next[sentinel] = sentinel;
      this.prev[sentinel] = sentinel;
      this.routeOf[sentinel] = route;
      this.unused[route] = vehicles - 1 - route;
    }
  }

  /** A route without customers, or -1 where all are used. */
  emptyRoute(): number {
    return this.unusedCount > 0 ? (this.unused[this.unusedCount - 1] as number) : -1;
  }

  sentinel(route: number): number {
    return this.nodes + route;
  }

  /** Puts a customer after a node. */
  insert(customer: number, after: number): void {
    this.link(customer, after);
    this.note(INSERTED, customer, after);
  }

  /** Takes a customer out of its route. The labels of what is left are renewed by `relabel`. */
  remove(customer: number): void {
    const after = this.prev[customer] as number;
    this.unlink(customer);
    this.note(REMOVED, customer, after);
  }

  /** From here on changes can be taken back. */
  mark(): void {
    this.logged = 0;
  }

  /** Takes back every change since the mark. Labels are right again for every route that was touched. */
  undo(): void {
    const { log } = this;
    for (let at = this.logged - PER_ENTRY; at >= 0; at -= PER_ENTRY) {
      if (log[at] === REMOVED) this.link(log[at + 1] as number, log[at + 2] as number);
      else this.unlink(log[at + 1] as number);
    }
    if (this.problem.windows !== null) {
      for (let at = 0; at < this.logged; at += PER_ENTRY) {
        const route = this.routeOf[log[at + 1] as number] as number;
        const after = this.routeOf[log[at + 2] as number] as number;
        if (route >= 0) this.relabel(route);
        if (after >= 0 && after !== route) this.relabel(after);
      }
    }
    this.logged = 0;
  }

  /** Renews the labels of a whole route. */
  relabel(route: number): void {
    const { windows, time, service } = this.problem;
    if (windows === null) return;
    const { next, prev, departs, latest, width } = this;
    const sentinel = this.nodes + route;
    let before = sentinel;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const arrival = (departs[before] as number) + (time[(this.place[before] as number) * width + node] as number);
      departs[node] = Math.max(arrival, windows.open[node] as number) + (service[node] as number);
      before = node;
    }
    let after = sentinel;
    for (let node = prev[sentinel] as number; node !== sentinel; node = prev[node] as number) {
      const leave = (latest[after] as number) - (time[node * width + (this.place[after] as number)] as number);
      latest[node] = Math.min(leave - (service[node] as number), windows.close[node] as number);
      after = node;
    }
  }

  /** What putting a customer between a node and its follower adds to the cost. */
  added(customer: number, after: number): number {
    const row = customer * this.width;
    const from = this.place[after] as number;
    const to = this.place[this.next[after] as number] as number;
    return (this.back[row + from] as number) + (this.problem.cost[row + to] as number) - (this.edge[after] as number);
  }

  private link(customer: number, after: number): void {
    const { next, prev, edge, load, size } = this;
    const route = this.routeOf[after] as number;
    const before = next[after] as number;
    const row = customer * this.width;
    const reach = this.back[row + (this.place[after] as number)] as number;
    const leave = this.problem.cost[row + (this.place[before] as number)] as number;
    const more = reach + leave - (edge[after] as number);
    this.cost += more;
    this.length[route] = (this.length[route] as number) + more + (this.problem.service[customer] as number);
    edge[after] = reach;
    edge[customer] = leave;
    next[after] = customer;
    prev[customer] = after;
    next[customer] = before;
    prev[before] = customer;
    this.routeOf[customer] = route;
    load[route] = (load[route] as number) + (this.problem.demand[customer] as number);
    size[route] = (size[route] as number) + 1;
    if (size[route] === 1) this.takeUnused(route);
  }

  private unlink(customer: number): void {
    const { next, prev, edge, load, size } = this;
    const route = this.routeOf[customer] as number;
    const after = prev[customer] as number;
    const before = next[customer] as number;
    const to = this.place[before] as number;
    const direct = this.problem.cost[(this.place[after] as number) * this.width + to] as number;
    const less = (edge[after] as number) + (edge[customer] as number) - direct;
    this.cost -= less;
    this.length[route] = (this.length[route] as number) - less - (this.problem.service[customer] as number);
    edge[after] = direct;
    next[after] = before;
    prev[before] = after;
    this.routeOf[customer] = -1;
    load[route] = (load[route] as number) - (this.problem.demand[customer] as number);
    size[route] = (size[route] as number) - 1;
    if (size[route] === 0) {
      this.used -= 1;
      this.unused[this.unusedCount] = route;
      this.unusedCount += 1;
    }
  }

  private takeUnused(route: number): void {
    this.used += 1;
    const last = this.unusedCount - 1;
    let at = last;
    while (this.unused[at] !== route) at -= 1;
    this.unused[at] = this.unused[last] as number;
    this.unusedCount = last;
  }

  private note(kind: number, customer: number, after: number): void {
    const { log, logged } = this;
    log[logged] = kind;
    log[logged + 1] = customer;
    log[logged + 2] = after;
    this.logged = logged + PER_ENTRY;
  }
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
