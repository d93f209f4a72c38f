import type { Found, FoundRoute } from './contract.ts';
import type { Tours } from './tours.ts';

/** The best routes so far. */
export class Best {
  cost = Number.POSITIVE_INFINITY;
  absentCount = Number.POSITIVE_INFINITY;
  private readonly tours: Tours;
  private readonly next: Int32Array;
  private readonly way: Int32Array;
  private absent: readonly number[] = [];

  constructor(tours: Tours) {
    this.tours = tours;
    this.next = tours.next.slice();
    this.way = tours.way.slice();
  }

  /** Takes the routes as they stand where they leave out fewer, or as many at less cost; whether it did. */
  offer(absent: Int32Array, count: number): boolean {
    const { cost, excess = 0 } = this.tours.model;
    if (excess > 0) return false;
    if (count > this.absentCount || (count === this.absentCount && cost >= this.cost)) return false;
    this.cost = cost;
    this.absentCount = count;
    this.next.set(this.tours.next);
    this.way.set(this.tours.way);
    this.absent = [...absent.subarray(0, count)];
    this.tours.model.keep?.();
    return true;
  }

  found(iterations: number): Found {
    const routes: FoundRoute[] = [];
    for (let route = 0; route < this.tours.routes; route += 1) {
      const customers: number[] = [];
      const sentinel = this.tours.sentinel(route);
      for (let node = this.next[sentinel] as number; node !== sentinel; node = this.next[node] as number) {
        customers.push(node);
      }
      const ways = customers.map((customer) => this.way[customer] as number);
      if (customers.length === 0) continue;
      const note = this.tours.model.noteOf?.(route);
      routes.push({ route, customers, ways, ...(note === undefined ? {} : { note }) });
    }
    return { routes, absent: this.absent, cost: this.cost, iterations };
  }
}
