import type { Order, RouteModel, Tours, VisitGroups } from '../engine/index.ts';
import { meanEdgeOf } from './heat.ts';
import { ReloadLabels } from './reload-labels.ts';
import type { ReloadKind, ReloadProblem } from './reload-problem.ts';
import { ReloadWindow } from './reload-window.ts';

/** Temperatures that suit few and long routes, found on public instances. */
const HEAT = { start: 3, end: 0.02 };
/** Lengths and costs are kept as multiples of this, so that sums of them are exact and do not drift. */
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
  readonly growing: boolean;
  readonly manyStrings = true;
  readonly groups: VisitGroups | undefined;
  cost = 0;
  readonly way = 0;
  private readonly problem: ReloadProblem;
  private readonly kinds: readonly ReloadKind[];
  private readonly allowed: Uint8Array;
  private readonly routeCost: Float64Array;
  private tours!: Tours;
  private labels!: ReloadLabels;
  private window!: ReloadWindow;

  constructor(problem: ReloadProblem, heat: { readonly start: number; readonly end: number } = HEAT) {
    const { visits, kinds } = problem;
    this.problem = { ...problem, distances: problem.distances.map(grained) };
    this.customers = visits;
    this.kindOf = problem.kindOf;
    this.kinds = kinds;
    this.heat = heat;
    ({ near: this.near, nearWidth: this.nearWidth } = nearVisits(problem));
    const placed = new Set(problem.placeOf.subarray(1)).size;
    this.nearTried = Math.ceil((NEAR_TRIED * visits) / placed);
    this.growing = problem.instead === undefined;
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
  }

  bind(tours: Tours): void {
    this.tours = tours;
    this.labels = new ReloadLabels(this.problem, tours);
    this.window = new ReloadWindow(this.labels, tours);
  }

  linked(customer: number, after: number, before: number, route: number): void {
    this.labels.linked(customer, after, before, route);
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    this.labels.unlinked(customer, after, before, route);
  }

  renew(route: number): void {
    const was = this.routeCost[route] as number;
    let is = 0;
    if ((this.tours.size[route] as number) > 0) {
      this.labels.renew(route);
      const { openingCost, costPerDistance } = this.kinds[this.kindOf[route] as number] as ReloadKind;
      is = grained(openingCost + costPerDistance * (this.labels.length[route] as number));
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
    const { labels } = this;
    const kind = this.look(customer, after);
    if (this.alone) return kind.openingCost + kind.costPerDistance * this.added;
    const beside = (labels.beside[after] as number) + Math.min(this.ahead, this.behind);
    return (
      kind.costPerDistance *
      (this.added + Math.min(labels.growthWithout(after, this.tours.routeOf[after] as number), beside))
    );
  }

  price(customer: number, after: number): number {
    const { labels, problem } = this;
    const route = this.tours.routeOf[after] as number;
    const kind = this.look(customer, after);
    const service = problem.service[customer] as number;
    if (this.alone) {
      const fits = this.time(kind, this.added, kind.lastReload ? 1 : 0, service);
      return fits ? kind.openingCost + kind.costPerDistance * this.added : Number.POSITIVE_INFINITY;
    }
    const was = labels.length[route] as number;
    let growth = this.quickGrowth(problem.demand[customer] as number, after);
    let count = labels.reloads[route] as number;
    if (growth === Number.POSITIVE_INFINITY) {
      this.window.replan(kind, problem.demand[customer] as number, after, this.ahead, this.behind);
      growth = this.window.least - was + (labels.direct[route] as number);
      count = this.window.count;
    }
    const length = was + this.added + growth;
    if (!this.time(kind, length, count, (labels.busy[route] as number) + service)) return Number.POSITIVE_INFINITY;
    return kind.costPerDistance * (this.added + growth);
  }

  /**
   * What the detours grow by where the route keeps its reloads, one of them perhaps beside the new stop instead of in its gap, and no
   * other choice can be better; infinite where that is not known.
   */
  private quickGrowth(demand: number, after: number): number {
    const { labels } = this;
    const unknown = Number.POSITIVE_INFINITY;
    const without = labels.growthWithout(after, this.tours.routeOf[after] as number);
    const ahead = (labels.beside[after] as number) + this.ahead;
    const behind = (labels.beside[after] as number) + this.behind;
    if (labels.reloaded[after] === 0) {
      return without <= ahead && without <= behind && demand <= (labels.roomBefore[after] as number)
        ? without
        : unknown;
    }
    if (without < Math.min(ahead, behind)) return unknown;
    if (behind <= ahead) return demand <= (labels.roomBefore[after] as number) ? behind : unknown;
    return demand <= (labels.roomAfter[after] as number) ? ahead : unknown;
  }

  private added = 0;
  private ahead = 0;
  private behind = 0;
  private alone = false;

  /**
   * Takes the lengths around a stop put after a node: what the route grows by without reloads, or is long if the stop is `alone` in it, and
   * what a reload ahead of it or behind it adds.
   */
  private look(customer: number, after: number): ReloadKind {
    const { labels, problem, tours } = this;
    const { distances, placeOf, places } = problem;
    const number = this.kindOf[tours.routeOf[after] as number] as number;
    const kind = this.kinds[number] as ReloadKind;
    const over = labels.over[number] as Float64Array;
    const before = tours.next[after] as number;
    const first = after > this.customers;
    const last = before > this.customers;
    const from = first ? kind.start : (placeOf[after] as number);
    const to = last ? kind.end : (placeOf[before] as number);
    const place = placeOf[customer] as number;
    const reach = distances[from * places + place] as number;
    const leave = distances[place * places + to] as number;
    this.alone = first && last;
    this.behind = last && !kind.lastReload ? Number.POSITIVE_INFINITY : (over[place * places + to] as number) - leave;
    this.ahead = first ? Number.POSITIVE_INFINITY : (over[from * places + place] as number) - reach;
    this.added = reach + leave + (this.alone ? (kind.lastReload ? this.behind : 0) : -(labels.edge[after] as number));
    return kind;
  }

  exchanged(route: number, other: number): void {
    this.labels.retrace(route);
    this.labels.retrace(other);
  }

  /** Gives routes that were changed to vehicles of another kind where that costs less. */
  settle(): void {
    if (this.problem.instead === undefined) return;
    const { tours } = this;
    const { touchedCount } = tours;
    for (let at = 0; at < touchedCount; at += 1) {
      const route = tours.touched[at] as number;
      if ((tours.size[route] as number) > 0) this.change(route, this.problem.instead);
    }
  }

  private change(route: number, instead: readonly (readonly number[])[]): void {
    const { tours, labels } = this;
    let least = (this.routeCost[route] as number) - GRAIN;
    let best = -1;
    for (const number of instead[this.kindOf[route] as number] ?? []) {
      const other = tours.emptyRoute(number);
      if (other < 0 || !this.admitsAll(route, number)) continue;
      const kind = this.kinds[number] as ReloadKind;
      const most = (least - kind.openingCost) / kind.costPerDistance;
      const length = labels.lengthAs(route, number, most);
      if (length >= most || !this.time(kind, length, labels.reloadsAs, labels.busy[route] as number)) continue;
      least = kind.openingCost + kind.costPerDistance * length;
      best = other;
    }
    if (best < 0) return;
    tours.exchange(route, best);
    this.renew(route);
    this.renew(best);
  }

  private admitsAll(route: number, kind: number): boolean {
    const { next } = this.tours;
    const sentinel = this.tours.sentinel(route);
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      if (this.allowed[node * this.kinds.length + kind] === 0) return false;
    }
    return true;
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours, this.cost);
  }

  /** Visits of a route in order, and the facility of each reload as -1 - place. */
  stopsOf(route: number): readonly number[] {
    this.renew(route);
    return this.labels.stopsOf(route);
  }

  private time(kind: ReloadKind, length: number, reloads: number, busy: number): boolean {
    return length * kind.timePerDistance + busy + reloads * kind.reloadTime <= kind.mostTime + 1e-9;
  }
}

function grained(value: number): number {
  return Math.round(value / GRAIN) * GRAIN;
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
