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
  /** How many routes of each kind there may be. */
  readonly most: Int32Array;
  /** Of each route as one of each kind, [route * kinds + kind]. */
  readonly cost: Float64Array;
  /** Customers of route r: `customers[first[r] .. first[r + 1])`. */
  readonly first = new Int32Array(MOST_ROUTES + 1);
  customers = new Int32Array(4 * MOST_ROUTES);
  private readonly tours: Tours;
  /** Of the cheapest kind. */
  private readonly least = new Float64Array(MOST_ROUTES);
  private readonly own: Float64Array;
  private readonly worth = new Float64Array(MOST_ROUTES);
  private readonly key = new Float64Array(MOST_ROUTES);
  private readonly known = new Map<number, number>();
  private readonly high: Int32Array;
  private readonly low: Int32Array;
  /** 1 for routes that changed since they were noted last. */
  private readonly stale: Uint8Array;

  constructor(tours: Tours, random: Random) {
    this.tours = tours;
    this.most = tours.model.vehicleCounts ?? Int32Array.of(tours.routes);
    this.cost = new Float64Array(MOST_ROUTES * this.most.length);
    this.own = new Float64Array(this.most.length);
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

  /** Customers of a route that was met, in order. */
  customersOf(route: number): Int32Array {
    return this.customers.subarray(this.first[route] as number, this.first[route + 1] as number);
  }

  private add(route: number): void {
    const { tours, known } = this;
    const key = this.keyOf(route);
    const least = this.reckon(route);
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
      this.price(this.count, least);
      this.worth[this.count] = worth;
      this.count += 1;
      this.first[this.count] = end;
      return;
    }
    if (worth < (this.worth[old] as number)) this.worth[old] = worth;
    if (least >= (this.least[old] as number)) return;
    this.price(old, least);
    this.write(route, this.first[old] as number);
  }

  /** Costs of a route of the tours by kind; returns the least. */
  private reckon(route: number): number {
    const { own, tours } = this;
    let least = Number.POSITIVE_INFINITY;
    for (let kind = 0; kind < own.length; kind += 1) {
      own[kind] = tours.model.costOf?.(route, kind) ?? Number.POSITIVE_INFINITY;
      least = Math.min(least, own[kind] as number);
    }
    return least;
  }

  private price(place: number, least: number): void {
    this.least[place] = least;
    this.cost.set(this.own, place * this.own.length);
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
    const { worth, cost, least, key, first, customers, known } = this;
    const kinds = this.most.length;
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
      cost.copyWithin(kept * kinds, route * kinds, (route + 1) * kinds);
      least[kept] = least[route] as number;
      worth[kept] = worth[route] as number;
      key[kept] = key[route] as number;
      known.set(key[kept] as number, kept);
      kept += 1;
      first[kept] = end;
    }
    this.count = kept;
  }
}
