import type { RouteModel } from './contract.ts';

const REMOVED = 0;
const INSERTED = 1;
const EXCHANGED = 2;
const CHANGED = 3;
const PER_ENTRY = 4;

/**
 * Routes as linked lists on typed arrays. Nodes 1 to n are customers; node n + 1 + r is the sentinel of route r, its depot at both
 * ends. Every change is logged, so that a step can be taken back without copying. The model is told of every change.
 */
export class Tours {
  readonly model: RouteModel;
  readonly customers: number;
  readonly routes: number;
  readonly next: Int32Array;
  readonly prev: Int32Array;
  /** -1 while the customer is in no route. */
  readonly routeOf: Int32Array;
  /** How each customer is done. */
  readonly way: Int32Array;
  /** 1 for customers that stay where they are, with all that lies before them. */
  readonly fixed: Uint8Array;
  readonly size: Int32Array;
  /** Fixed customers of each route. */
  readonly fixedSize: Int32Array;
  /** Routes with at least one customer: the first `used` of `inUse`, in no order. */
  readonly inUse: Int32Array;
  used = 0;
  /** Customers in routes. */
  placed = 0;
  /** Routes changed since the mark: the first `touchedCount` of `touched`. */
  readonly touched: Int32Array;
  touchedCount = 0;
  /** Number of kinds of routes. */
  readonly kinds: number;
  /** Where each used route stands in `inUse`. */
  private readonly placeInUse: Int32Array;
  private readonly stamps: Int32Array;
  /** Count of the marks. */
  stamp = 1;
  private log: Int32Array;
  private logged = 0;
  private readonly kindOf: Int32Array;
  private readonly unused: readonly number[][];

  constructor(model: RouteModel) {
    const { customers, kindOf } = model;
    const routes = kindOf.length;
    const total = customers + 1 + routes;
    this.model = model;
    this.customers = customers;
    this.routes = routes;
    this.next = new Int32Array(total);
    this.prev = new Int32Array(total);
    this.routeOf = new Int32Array(total).fill(-1);
    this.way = new Int32Array(total);
    this.fixed = new Uint8Array(total);
    this.size = new Int32Array(routes);
    this.fixedSize = new Int32Array(routes);
    this.touched = new Int32Array(routes);
    this.inUse = new Int32Array(routes);
    this.placeInUse = new Int32Array(routes);
    this.stamps = new Int32Array(routes);
    this.log = new Int32Array(PER_ENTRY * (4 * customers + 8));
    this.kindOf = kindOf;
    this.kinds = kindOf.reduce((most, kind) => Math.max(most, kind + 1), 0);
    this.unused = Array.from({ length: this.kinds }, () => []);
    for (let route = routes - 1; route >= 0; route -= 1) {
      const sentinel = this.sentinel(route);
      this.next[sentinel] = sentinel;
      this.prev[sentinel] = sentinel;
      this.routeOf[sentinel] = route;
      this.unused[kindOf[route] as number]?.push(route);
    }
    model.bind(this);
  }

  sentinel(route: number): number {
    return this.customers + 1 + route;
  }

  /** A route of the kind without customers, or -1 where all are used. */
  emptyRoute(kind: number): number {
    return (this.unused[kind] as number[]).at(-1) ?? -1;
  }

  /** Puts a customer after a node, done in the given way. */
  insert(customer: number, after: number, way: number): void {
    this.note(INSERTED, customer, after, this.way[customer] as number);
    this.way[customer] = way;
    this.link(customer, after);
  }

  /** Takes a customer out of its route. */
  remove(customer: number): void {
    this.note(REMOVED, customer, this.prev[customer] as number, 0);
    this.unlink(customer);
  }

  /** Two routes change their whole contents. */
  exchange(route: number, other: number): void {
    this.note(EXCHANGED, route, other, 0);
    this.swap(route, other);
  }

  /** Notes a change of the model's own that belongs to a route: to take it back, the model is told what was before. */
  changed(route: number, subject: number, before: number): void {
    this.note(CHANGED, subject, before, 0);
    this.touch(route);
  }

  /** Fixes customers where they are. What lies before one in its route is fixed with it. */
  fix(customers: readonly number[]): void {
    for (const customer of customers) {
      const route = this.routeOf[customer] as number;
      if (route < 0) continue;
      for (let node = customer; node !== this.sentinel(route) && this.fixed[node] === 0; ) {
        this.fixed[node] = 1;
        this.fixedSize[route] = (this.fixedSize[route] as number) + 1;
        node = this.prev[node] as number;
      }
    }
  }

  /** From here on changes can be taken back. */
  mark(): void {
    this.logged = 0;
    this.touchedCount = 0;
    this.stamp += 1;
  }

  /** Whether a route changed since the mark. */
  isTouched(route: number): boolean {
    return this.stamps[route] === this.stamp;
  }

  /** Takes back every change since the mark; the routes that were touched are renewed. */
  undo(): void {
    const { log } = this;
    for (let at = this.logged - PER_ENTRY; at >= 0; at -= PER_ENTRY) {
      const subject = log[at + 1] as number;
      const other = log[at + 2] as number;
      if (log[at] === REMOVED) this.link(subject, other);
      else if (log[at] === EXCHANGED) this.swap(subject, other);
      else if (log[at] === CHANGED) this.model.restore?.(subject, other);
      else {
        this.unlink(subject);
        this.way[subject] = log[at + 3] as number;
      }
    }
    for (let at = 0; at < this.touchedCount; at += 1) this.model.renew(this.touched[at] as number);
    this.logged = 0;
  }

  private link(customer: number, after: number): void {
    const { next, prev, size, routeOf } = this;
    const route = routeOf[after] as number;
    const before = next[after] as number;
    next[after] = customer;
    prev[customer] = after;
    next[customer] = before;
    prev[before] = customer;
    routeOf[customer] = route;
    size[route] = (size[route] as number) + 1;
    this.placed += 1;
    if (size[route] === 1) this.take(route);
    this.touch(route);
    this.model.linked(customer, after, before, route);
  }

  private unlink(customer: number): void {
    const { next, prev, size, routeOf } = this;
    const route = routeOf[customer] as number;
    const after = prev[customer] as number;
    const before = next[customer] as number;
    next[after] = before;
    prev[before] = after;
    routeOf[customer] = -1;
    size[route] = (size[route] as number) - 1;
    this.placed -= 1;
    if (size[route] === 0) this.giveBack(route);
    this.touch(route);
    this.model.unlinked(customer, after, before, route);
  }

  private swap(route: number, other: number): void {
    const { size } = this;
    const [here, there] = [size[route] as number, size[other] as number];
    if (here === 0 && there > 0) this.take(route);
    if (there === 0 && here > 0) this.take(other);
    const first = this.next[this.sentinel(route)] as number;
    const last = this.prev[this.sentinel(route)] as number;
    this.hang(this.next[this.sentinel(other)] as number, this.prev[this.sentinel(other)] as number, there, route);
    this.hang(first, last, here, other);
    size[route] = there;
    size[other] = here;
    if (here > 0 && there === 0) this.giveBack(route);
    if (there > 0 && here === 0) this.giveBack(other);
    this.touch(route);
    this.touch(other);
    this.model.exchanged?.(route, other);
  }

  /** Hangs a chain of customers that was in one route into another. */
  private hang(first: number, last: number, count: number, route: number): void {
    const sentinel = this.sentinel(route);
    this.next[sentinel] = count > 0 ? first : sentinel;
    this.prev[sentinel] = count > 0 ? last : sentinel;
    if (count === 0) return;
    this.prev[first] = sentinel;
    this.next[last] = sentinel;
    for (let node = first; node !== sentinel; node = this.next[node] as number) this.routeOf[node] = route;
  }

  private take(route: number): void {
    this.inUse[this.used] = route;
    this.placeInUse[route] = this.used;
    this.used += 1;
    const unused = this.unused[this.kindOf[route] as number] as number[];
    const last = unused.length - 1;
    let at = last;
    while (unused[at] !== route) at -= 1;
    unused[at] = unused[last] as number;
    unused.pop();
  }

  private giveBack(route: number): void {
    this.used -= 1;
    const last = this.inUse[this.used] as number;
    const place = this.placeInUse[route] as number;
    this.inUse[place] = last;
    this.placeInUse[last] = place;
    (this.unused[this.kindOf[route] as number] as number[]).push(route);
  }

  private touch(route: number): void {
    if (this.stamps[route] === this.stamp) return;
    this.stamps[route] = this.stamp;
    this.touched[this.touchedCount] = route;
    this.touchedCount += 1;
  }

  private note(kind: number, subject: number, other: number, way: number): void {
    const { logged } = this;
    if (logged + PER_ENTRY > this.log.length) this.grow();
    const { log } = this;
    log[logged] = kind;
    log[logged + 1] = subject;
    log[logged + 2] = other;
    log[logged + 3] = way;
    this.logged = logged + PER_ENTRY;
  }

  private grow(): void {
    const longer = new Int32Array(2 * this.log.length);
    longer.set(this.log);
    this.log = longer;
  }
}
