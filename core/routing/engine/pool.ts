import type { Random } from '../../base/index.ts';
import type { Tours } from './tours.ts';

/** Routes kept before the worse half of them is dropped. */
const MOST_ROUTES = 16_384;
const TWO_TO_20 = 1_048_576;

/**
 * Routes met in good solutions: of every set of customers the cheapest order. A route is worth what the best solution cost in which it
 * was met.
 */
export class RoutePool {
  count = 0;
  readonly cost = new Float64Array(MOST_ROUTES);
  /** Customers of route r: `customers[first[r] .. first[r + 1])`. */
  readonly first = new Int32Array(MOST_ROUTES + 1);
  customers = new Int32Array(4 * MOST_ROUTES);
  private readonly tours: Tours;
  private readonly worth = new Float64Array(MOST_ROUTES);
  private readonly key = new Float64Array(MOST_ROUTES);
  private readonly known = new Map<number, number>();
  private readonly high: Int32Array;
  private readonly low: Int32Array;
  /** 1 for routes that changed since they were noted last. */
  private readonly stale: Uint8Array;

  constructor(tours: Tours, random: Random) {
    this.tours = tours;
    this.high = Int32Array.from({ length: tours.customers + 1 }, () => random.next() | 0);
    this.low = Int32Array.from({ length: tours.customers + 1 }, () => random.next() | 0);
    this.stale = new Uint8Array(tours.routes).fill(1);
  }

  /** The routes touched since the mark are others now. */
  changed(): void {
    const { touched, touchedCount } = this.tours;
    for (let at = 0; at < touchedCount; at += 1) this.stale[touched[at] as number] = 1;
  }

  /** Every route is another now. */
  changedAll(): void {
    this.stale.fill(1);
  }

  /** Takes note of the routes as they stand. */
  note(): void {
    const { tours, stale } = this;
    for (let at = 0; at < tours.used; at += 1) {
      const route = tours.inUse[at] as number;
      if (stale[route] === 0) continue;
      stale[route] = 0;
      this.add(route);
    }
  }

  private add(route: number): void {
    const { tours, known } = this;
    const key = this.keyOf(route);
    const cost = tours.model.costOf?.(route) ?? Number.POSITIVE_INFINITY;
    const worth = tours.model.cost;
    const old = known.get(key);
    if (old === undefined) {
      if (this.count === MOST_ROUTES) this.halve();
      const start = this.first[this.count] as number;
      const end = start + (tours.size[route] as number);
      if (end > this.customers.length) this.grow();
      this.write(route, start);
      known.set(key, this.count);
      this.key[this.count] = key;
      this.cost[this.count] = cost;
      this.worth[this.count] = worth;
      this.count += 1;
      this.first[this.count] = end;
      return;
    }
    if (worth < (this.worth[old] as number)) this.worth[old] = worth;
    if (cost >= (this.cost[old] as number)) return;
    this.cost[old] = cost;
    this.write(route, this.first[old] as number);
  }

  private write(route: number, start: number): void {
    const { tours, customers } = this;
    const sentinel = tours.sentinel(route);
    let to = start;
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      customers[to] = node;
      to += 1;
    }
  }

  private keyOf(route: number): number {
    const { tours, high, low } = this;
    const sentinel = tours.sentinel(route);
    let upper = 0;
    let lower = 0;
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      upper = (upper + (high[node] as number)) | 0;
      lower = (lower + (low[node] as number)) | 0;
    }
    return (upper >>> 0) * TWO_TO_20 + (lower >>> 12);
  }

  private grow(): void {
    const longer = new Int32Array(2 * this.customers.length);
    longer.set(this.customers);
    this.customers = longer;
  }

  /** Drops the routes that are worth less than the middle one. */
  private halve(): void {
    const { worth, cost, key, first, customers, known } = this;
    const middle = worth.slice().sort()[MOST_ROUTES >> 1] as number;
    known.clear();
    let kept = 0;
    let end = 0;
    for (let route = 0; route < this.count; route += 1) {
      if ((worth[route] as number) >= middle) continue;
      const [from, to] = [first[route] as number, first[route + 1] as number];
      customers.copyWithin(end, from, to);
      first[kept] = end;
      end += to - from;
      cost[kept] = cost[route] as number;
      worth[kept] = worth[route] as number;
      key[kept] = key[route] as number;
      known.set(key[kept] as number, kept);
      kept += 1;
      first[kept] = end;
    }
    this.count = kept;
  }
}
