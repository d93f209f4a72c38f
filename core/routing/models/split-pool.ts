import type { Tours } from '../engine/index.ts';

/** Routes that amounts are passed on through, the last one with room included. */
const DEPTH = 2;
/** How often it is tried for a customer where there are more shared parts than routes: once in so many. */
const SELDOM = 4;

/** What is brought where; the arrays are the model's own. */
export type Amounts = {
  /** Customer of each part. */
  readonly place: Int32Array;
  /** First part of each customer; its last lies before the first of the next. */
  readonly firstPart: Int32Array;
  /** Of each route. */
  readonly load: Int32Array;
  /** What no route brings yet to each customer. */
  readonly missing: Int32Array;
  readonly capacity: number;
};

/**
 * Room that a route has beyond its own: where it shares a customer with another route that has room, that one can bring more of it.
 * So room wanders through shared customers from route to route.
 */
export class SplitPool {
  private readonly place: Int32Array;
  private readonly firstPart: Int32Array;
  private readonly load: Int32Array;
  private readonly missing: Int32Array;
  private readonly capacity: number;
  /** Parts of each customer that are in routes. */
  private readonly partsIn: Int32Array;
  /** Parts in each route whose customer is in another route, too. */
  private readonly shared: Int32Array;
  private sharedInAll = 0;
  private pooling = true;
  private asked = 0;
  private readonly tours: Tours;
  private readonly emptied: number[] = [];

  constructor(tours: Tours, { place, firstPart, load, missing, capacity }: Amounts) {
    this.tours = tours;
    this.missing = missing;
    this.place = place;
    this.firstPart = firstPart;
    this.load = load;
    this.capacity = capacity;
    this.partsIn = new Int32Array(firstPart.length);
    this.shared = new Int32Array(load.length);
  }

  /** Told after a part was put into a route. */
  linked(part: number, route: number): void {
    const customer = this.place[part] as number;
    const count = (this.partsIn[customer] as number) + 1;
    this.partsIn[customer] = count;
    if (count === 1) return;
    this.share(route, 1);
    if (count === 2) this.share(this.otherRoute(customer, part), 1);
  }

  /** Told after a part was taken out of a route. */
  unlinked(part: number, route: number): void {
    const customer = this.place[part] as number;
    const count = (this.partsIn[customer] as number) - 1;
    this.partsIn[customer] = count;
    if (count === 0) return;
    this.share(route, -1);
    if (count === 1) this.share(this.otherRoute(customer, part), -1);
  }

  /** Told before each customer: where most routes share customers, passing on is too dear to be tried for every one. */
  begin(): void {
    this.dropEmpty();
    this.asked += 1;
    this.pooling = this.sharedInAll <= this.tours.used || this.asked % SELDOM === 0;
  }

  /** Whether a route has room of its own or may pass something on. */
  mayHaveRoom(route: number): boolean {
    return (this.load[route] as number) < this.capacity || (this.pooling && (this.shared[route] as number) > 0);
  }

  /** Room of a route, its own and what it can pass on without touching the customer. */
  room(route: number, customer: number): number {
    if (!this.pooling) return this.capacity - (this.load[route] as number);
    return this.capacity - (this.load[route] as number) + this.passable(route, customer, DEPTH - 1);
  }

  /** Makes room in a route as far as it can, without touching the customer. Parts that then bring nothing wait for `dropEmpty`. */
  make(route: number, amount: number, customer: number): void {
    const lacking = amount - (this.capacity - (this.load[route] as number));
    if (lacking > 0) this.pass(route, lacking, customer, DEPTH - 1);
  }

  /** Takes parts that bring nothing out of their routes. Positions found before may be gone then. */
  dropEmpty(): void {
    const { routeOf, way } = this.tours;
    for (const part of this.emptied) if (routeOf[part] !== -1 && way[part] === 0) this.tours.remove(part);
    this.emptied.length = 0;
  }

  /** Sets what a part in a route brings. */
  setAmount(part: number, amount: number): void {
    const { way, routeOf } = this.tours;
    const route = routeOf[part] as number;
    const before = way[part] as number;
    this.tours.changed(route, part, before);
    this.restore(part, amount);
  }

  /** The same, not noted: for taking back. */
  restore(part: number, amount: number): void {
    const { way, routeOf } = this.tours;
    const route = routeOf[part] as number;
    const customer = this.place[part] as number;
    const more = amount - (way[part] as number);
    this.load[route] = (this.load[route] as number) + more;
    this.missing[customer] = (this.missing[customer] as number) - more;
    way[part] = amount;
  }

  private passable(route: number, via: number, depth: number): number {
    if (depth === 0 || this.shared[route] === 0) return 0;
    const { next, routeOf, way, fixed } = this.tours;
    const { place, partsIn, firstPart, capacity, load } = this;
    const sentinel = this.tours.sentinel(route);
    let total = 0;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const customer = place[node] as number;
      if (customer === via || (partsIn[customer] as number) < 2 || fixed[node] === 1) continue;
      const end = firstPart[customer + 1] as number;
      let taken = 0;
      for (let part = firstPart[customer] as number; part < end; part += 1) {
        const other = routeOf[part] as number;
        if (other < 0 || other === route || fixed[part] === 1) continue;
        taken += capacity - (load[other] as number) + this.passable(other, customer, depth - 1);
      }
      total += Math.min(taken, way[node] as number);
    }
    return total;
  }

  /** Passes up to an amount from a route on to others; returns how much. */
  private pass(route: number, amount: number, via: number, depth: number): number {
    if (depth === 0 || this.shared[route] === 0) return 0;
    const { next, routeOf, way, fixed } = this.tours;
    const { place, partsIn, firstPart, capacity, load } = this;
    const sentinel = this.tours.sentinel(route);
    let left = amount;
    let node = next[sentinel] as number;
    while (node !== sentinel && left > 0) {
      const customer = place[node] as number;
      if (customer !== via && (partsIn[customer] as number) > 1 && fixed[node] === 0) {
        const end = firstPart[customer + 1] as number;
        for (let part = firstPart[customer] as number; part < end && left > 0; part += 1) {
          const other = routeOf[part] as number;
          if (other < 0 || other === route || fixed[part] === 1) continue;
          const wanted = Math.min(left, way[node] as number);
          let room = capacity - (load[other] as number);
          if (room < wanted) room += this.pass(other, wanted - room, customer, depth - 1);
          const moved = Math.min(wanted, room);
          if (moved <= 0) continue;
          this.setAmount(part, (way[part] as number) + moved);
          this.setAmount(node, (way[node] as number) - moved);
          left -= moved;
        }
        if (way[node] === 0) this.emptied.push(node);
      }
      node = next[node] as number;
    }
    return amount - left;
  }

  private otherRoute(customer: number, part: number): number {
    const { routeOf } = this.tours;
    let other = this.firstPart[customer] as number;
    while (other === part || routeOf[other] === -1) other += 1;
    return routeOf[other] as number;
  }

  private share(route: number, count: number): void {
    this.sharedInAll += count;
    this.shared[route] = (this.shared[route] as number) + count;
  }
}
