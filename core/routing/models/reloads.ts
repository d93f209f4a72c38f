import type { Order, RouteModel, Tours, VisitGroups } from '../engine/index.ts';
import { ReloadLabels } from './reload-labels.ts';
import type { ReloadKind, ReloadProblem } from './reload-problem.ts';

const HEAT = { start: 3, end: 0.01 };
/** Costs are kept as multiples of this, so that sums of them are exact and do not drift. */
const GRAIN = 2 ** -20;
/** Neighbours that are kept for each visit, itself included. */
const MOST_NEAR = 250;
/** Neighbouring places whose sides are tried first. */
const NEAR_TRIED = 40;

/**
 * Vehicles that reload on the way. The order of stops is what the engine changes; where to reload follows from it exactly, and the
 * price of an insertion is exact as well: the best reloads with the new stop in them.
 */
export class ReloadModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly heat: { readonly start: number; readonly end: number };
  readonly nearTried: number;
  readonly manyStrings = true;
  readonly groups: VisitGroups | undefined;
  cost = 0;
  readonly way = 0;
  private readonly problem: ReloadProblem;
  private readonly kinds: readonly ReloadKind[];
  private readonly allowed: Uint8Array;
  private readonly routeCost: Float64Array;
  private readonly loads: Float64Array;
  private readonly sums: Float64Array;
  private readonly counts: Int32Array;
  private tours!: Tours;
  private labels!: ReloadLabels;

  constructor(problem: ReloadProblem, heat: { readonly start: number; readonly end: number } = HEAT) {
    const { visits, kinds } = problem;
    this.problem = problem;
    this.customers = visits;
    this.kindOf = problem.kindOf;
    this.kinds = kinds;
    this.heat = heat;
    ({ near: this.near, nearWidth: this.nearWidth } = nearVisits(problem));
    const placed = new Set(problem.placeOf.subarray(1)).size;
    this.nearTried = Math.ceil((NEAR_TRIED * visits) / placed);
    this.orders = ordersOf(problem);
    const dayOf = problem.kindOf.map((kind) => kinds[kind]?.day ?? 0);
    this.groups = problem.groups === undefined ? undefined : { ...problem.groups, dayOf };
    this.allowed = new Uint8Array((visits + 1) * kinds.length);
    for (let visit = 1; visit <= visits; visit += 1) {
      kinds.forEach(({ capacity }, kind) => {
        const can = (problem.demand[visit] as number) <= capacity && problem.allows(visit, kind);
        this.allowed[visit * kinds.length + kind] = can ? 1 : 0;
      });
    }
    this.routeCost = new Float64Array(problem.kindOf.length);
    this.loads = new Float64Array(visits + 2);
    this.sums = new Float64Array(visits + 2);
    this.counts = new Int32Array(visits + 2);
  }

  bind(tours: Tours): void {
    this.tours = tours;
    this.labels = new ReloadLabels(this.problem, tours);
  }

  linked(): void {
    // Everything is kept by `renew`.
  }

  unlinked(): void {
    // Everything is kept by `renew`.
  }

  renew(route: number): void {
    const was = this.routeCost[route] as number;
    let is = 0;
    if ((this.tours.size[route] as number) > 0) {
      this.labels.renew(route);
      const { openingCost, costPerDistance } = this.kinds[this.kindOf[route] as number] as ReloadKind;
      is = Math.round((openingCost + costPerDistance * (this.labels.length[route] as number)) / GRAIN) * GRAIN;
    }
    this.routeCost[route] = is;
    this.cost += is - was;
  }

  holds(route: number): boolean {
    if (this.tours.size[route] === 0) return true;
    const { labels } = this;
    const kind = this.kinds[this.kindOf[route] as number] as ReloadKind;
    return this.time(
      kind,
      labels.length[route] as number,
      labels.reloads[route] as number,
      labels.busy[route] as number,
    );
  }

  admits(customer: number, route: number): boolean {
    return this.allowed[customer * this.kinds.length + (this.kindOf[route] as number)] === 1;
  }

  bound(customer: number, after: number): number {
    const { labels, problem, tours } = this;
    const { distances, placeOf, places } = problem;
    const route = tours.routeOf[after] as number;
    const number = this.kindOf[route] as number;
    const kind = this.kinds[number] as ReloadKind;
    const before = tours.next[after] as number;
    const first = after > problem.visits;
    const last = before > problem.visits;
    const from = first ? kind.start : (placeOf[after] as number);
    const to = last ? kind.end : (placeOf[before] as number);
    const place = placeOf[customer] as number;
    const reach = distances[from * places + place] as number;
    const leave = distances[place * places + to] as number;
    const over = labels.over[number] as Float64Array;
    if (first && last) {
      const home = kind.lastReload ? (over[place * places + to] as number) : leave;
      return kind.openingCost + kind.costPerDistance * (reach + home);
    }
    const added = reach + leave - (labels.edge[after] as number);
    if (first) {
      // No reload can have been in this gap.
      return kind.costPerDistance * added;
    }
    const gone = labels.detour[after] as number;
    const onward = (over[place * places + to] as number) - leave - gone;
    if (last) return kind.costPerDistance * (kind.lastReload ? added + onward : added);
    const ahead = (over[from * places + place] as number) - reach - gone;
    return kind.costPerDistance * (added + Math.min(0, onward, ahead));
  }

  price(customer: number, after: number): number {
    const { labels, problem, tours } = this;
    const { distances, placeOf, places, demand, service } = problem;
    const route = tours.routeOf[after] as number;
    const number = this.kindOf[route] as number;
    const kind = this.kinds[number] as ReloadKind;
    const before = tours.next[after] as number;
    const first = after > problem.visits;
    const last = before > problem.visits;
    const from = first ? kind.start : (placeOf[after] as number);
    const to = last ? kind.end : (placeOf[before] as number);
    const place = placeOf[customer] as number;
    const reach = distances[from * places + place] as number;
    const leave = distances[place * places + to] as number;
    const over = labels.over[number] as Float64Array;
    const onward = (over[place * places + to] as number) - leave;
    if (first && last) {
      const length = reach + leave + (kind.lastReload ? onward : 0);
      const fits = this.time(kind, length, kind.lastReload ? 1 : 0, service[customer] as number);
      return fits ? kind.openingCost + kind.costPerDistance * length : Number.POSITIVE_INFINITY;
    }
    const ahead = first ? Number.POSITIVE_INFINITY : (over[from * places + place] as number) - reach;
    const direct = (labels.direct[route] as number) + reach + leave - (labels.edge[after] as number);
    this.split(kind, demand[customer] as number, after, before, ahead, onward);
    const length = direct + this.least;
    const busy = (labels.busy[route] as number) + (service[customer] as number);
    if (!this.time(kind, length, this.leastCount, busy)) return Number.POSITIVE_INFINITY;
    return kind.costPerDistance * (length - (labels.length[route] as number));
  }

  meanEdge(): number {
    let placed = 0;
    for (let visit = 1; visit <= this.customers; visit += 1)
      if ((this.tours.routeOf[visit] as number) >= 0) placed += 1;
    return this.cost / Math.max(1, placed + this.tours.used);
  }

  /** Visits of a route in order, and the facility of each reload as -1 - place. */
  stopsOf(route: number): readonly number[] {
    this.renew(route);
    return this.labels.stopsOf(route);
  }

  private least = 0;
  private leastCount = 0;

  /**
   * Least detours of a route with one more stop of a demand, after one node and before another: without a reload beside the new stop,
   * with one ahead of it, with one behind it, with both.
   */
  private split(
    { capacity, lastReload }: ReloadKind,
    demand: number,
    after: number,
    before: number,
    ahead: number,
    behind: number,
  ): void {
    const { labels } = this;
    const first = after > this.customers;
    const last = before > this.customers;
    const { before: carried, beforeCount, after: rest, afterCount } = labels;
    const onwardCount = this.collectOnward(capacity - demand, after, before, lastReload);
    // Both, or the one that has to be.
    const back = first ? 0 : (carried[after] as number);
    const backCount = first ? 0 : (beforeCount[after] as number);
    const forth = first ? this.fromStart(before, capacity) : last ? 0 : (rest[after] as number);
    const forthCount = first ? this.fromStartCount : last ? 0 : (afterCount[after] as number);
    this.least = back + ahead + behind + forth;
    this.leastCount = backCount + 2 + forthCount;
    if (!first && onwardCount > 0) {
      const sum = back + ahead + (this.sums[onwardCount - 1] as number);
      if (sum < this.least) {
        this.least = sum;
        this.leastCount = backCount + 1 + (this.counts[onwardCount - 1] as number);
      }
    }
    this.throughStop(capacity - demand, after, behind + forth, 1 + forthCount, onwardCount, last && !lastReload);
  }

  private fromStartCount = 0;

  /** Least detours after a reload in the gap before a route's first stop. */
  private fromStart(before: number, capacity: number): number {
    const { labels, tours } = this;
    let best = Number.POSITIVE_INFINITY;
    for (let node = before; node <= this.customers; node = tours.next[node] as number) {
      if ((labels.loadTo[node] as number) > capacity) break;
      const sum = labels.onward[node] as number;
      if (sum >= best) continue;
      best = sum;
      this.fromStartCount = labels.onwardCount[node] as number;
    }
    return best;
  }

  /**
   * Lists how far a load that leaves so much room can go on after the new stop: least detours up to each next reload or the end, best so
   * far, by growing load. Returns the length of the list.
   */
  private collectOnward(room: number, after: number, before: number, lastReload: boolean): number {
    const { labels, tours, loads, sums, counts } = this;
    const loaded = after > this.customers ? 0 : (labels.loadTo[after] as number);
    let count = 0;
    let best = Number.POSITIVE_INFINITY;
    let bestCount = 0;
    if (before > this.customers && !lastReload) {
      loads[0] = 0;
      sums[0] = 0;
      counts[0] = 0;
      return 1;
    }
    for (let node = before; node <= this.customers; node = tours.next[node] as number) {
      const load = (labels.loadTo[node] as number) - loaded;
      if (load > room) break;
      const sum = labels.onward[node] as number;
      if (sum < best) {
        best = sum;
        bestCount = labels.onwardCount[node] as number;
      }
      loads[count] = load;
      sums[count] = best;
      counts[count] = bestCount;
      count += 1;
    }
    return count;
  }

  /** The new stop on a load taken before its forerunner: with a reload behind it (`behind`), or with none beside it. */
  private throughStop(
    room: number,
    after: number,
    behind: number,
    behindCount: number,
    listed: number,
    end: boolean,
  ): void {
    const { labels, tours, loads, sums, counts } = this;
    const first = after > this.customers;
    const loaded = first ? 0 : (labels.loadTo[after] as number);
    let reach = listed - 1;
    let node = first ? after : (tours.prev[after] as number);
    for (;;) {
      const load = loaded - (labels.loadTo[node] as number);
      if (load > room) return;
      const full = labels.full[node] as number;
      const fullCount = labels.fullCount[node] as number;
      if (!end && full + behind < this.least) {
        this.least = full + behind;
        this.leastCount = fullCount + behindCount;
      }
      while (reach >= 0 && (loads[reach] as number) + load > room) reach -= 1;
      if (reach >= 0 && full + (sums[reach] as number) < this.least) {
        this.least = full + (sums[reach] as number);
        this.leastCount = fullCount + (counts[reach] as number);
      }
      if (node > this.customers) return;
      node = tours.prev[node] as number;
    }
  }

  private time(kind: ReloadKind, length: number, reloads: number, busy: number): boolean {
    return length * kind.timePerDistance + busy + reloads * kind.reloadTime <= kind.mostTime + 1e-9;
  }
}

function nearVisits({ visits, distances, places, placeOf }: ReloadProblem): { near: Int32Array; nearWidth: number } {
  const nearWidth = Math.min(visits, MOST_NEAR);
  const near = new Int32Array((visits + 1) * nearWidth);
  const away = new Float64Array(visits + 1);
  const order = Int32Array.from({ length: visits }, (_, index) => index + 1);
  for (let visit = 1; visit <= visits; visit += 1) {
    const here = placeOf[visit] as number;
    for (let other = 1; other <= visits; other += 1) {
      const there = placeOf[other] as number;
      away[other] = (distances[here * places + there] as number) + (distances[there * places + here] as number);
    }
    away[visit] = -1;
    order.sort((left, right) => (away[left] as number) - (away[right] as number) || left - right);
    near.set(order.subarray(0, nearWidth), visit * nearWidth);
  }
  return { near, nearWidth };
}

/** By chance, heaviest first, and farthest and nearest first from the nearest place where a route may load. */
function ordersOf({ visits, distances, places, placeOf, demand, kinds, facilities }: ReloadProblem): readonly Order[] {
  const away = new Float64Array(visits + 1).fill(Number.POSITIVE_INFINITY);
  const hubs = new Set([...kinds.map((kind) => kind.start), ...facilities.flat()]);
  for (let visit = 1; visit <= visits; visit += 1) {
    for (const hub of hubs) {
      away[visit] = Math.min(away[visit] as number, distances[hub * places + (placeOf[visit] as number)] as number);
    }
  }
  return [
    { weight: 4, key: null },
    { weight: 4, key: (visit) => -(demand[visit] as number) },
    { weight: 2, key: (visit) => -(away[visit] as number) },
    { weight: 1, key: (visit) => away[visit] as number },
  ];
}
