import type { Tours } from '../engine/index.ts';
import { detours, type ReloadKind, type ReloadProblem } from './reload-problem.ts';
import { ReloadWindow } from './reload-window.ts';

const UNKNOWN = -1;

/**
 * Best reloads along every route, whose order of stops is given. A reload in the gap after a stop costs a detour over the best facility;
 * between two reloads no more than one load is served. The least sum of detours comes from a shortest path over the gaps, kept from
 * both ends, so that an insertion can be priced exactly from what lies around it.
 * Source of the idea: the split of a giant tour, Beasley, Omega 11(4), 1983 (from memory).
 *
 * All arrays are per node; the gap of a node is the one after it. `Count` is the number of reloads in the sum of the same name.
 */
export class ReloadLabels {
  /** Demand up to the node and with it. */
  readonly loadTo: Float64Array;
  /** Distance to the next node. */
  readonly edge: Float64Array;
  /** What a reload in the gap adds to it. */
  readonly detour: Float64Array;
  /** Least detours before the gap such that what is carried suffices up to the gap, and the same with a reload in the gap. */
  readonly before: Float64Array;
  readonly beforeCount: Int32Array;
  readonly full: Float64Array;
  readonly fullCount: Int32Array;
  /** Least detours after the gap, if a reload is made in it; the same with its own detour; 0 for the end of the route. */
  readonly after: Float64Array;
  readonly afterCount: Int32Array;
  readonly onward: Float64Array;
  readonly onwardCount: Int32Array;
  /** Whether there is a reload in the gap as the route is now. */
  readonly reloaded: Uint8Array;
  /** What the least detours of the whole route grow by, at least, where a stop comes into the gap and a reload beside it: less its own. */
  readonly beside: Float64Array;
  /** The same with no reload beside it; reckoned when it is asked for. */
  private readonly without: Float64Array;
  /** Load that still fits before the gap and after it, as the route is reloaded now; the same where there is no reload in the gap. */
  readonly roomBefore: Float64Array;
  readonly roomAfter: Float64Array;
  /** Per route: distance without and with reloads, their number, and service times. */
  readonly direct: Float64Array;
  readonly length: Float64Array;
  readonly reloads: Int32Array;
  readonly busy: Float64Array;
  /** Per kind: the lengths over a facility. */
  readonly over: readonly Float64Array[];
  private readonly stops: readonly Int32Array[];
  /** The gap before which the last reload lies that leads to `before`. */
  private readonly source: Int32Array;
  private readonly queue: Int32Array;
  private readonly asFull: Float64Array;
  private readonly asCount: Int32Array;
  /** Row-major [from * places + to]. */
  private readonly distances: Float64Array;
  private readonly problem: ReloadProblem;
  private readonly tours: Tours;
  private readonly window: ReloadWindow;

  constructor(problem: ReloadProblem, tours: Tours) {
    const total = problem.visits + 1 + problem.kindOf.length;
    const routes = problem.kindOf.length;
    const perNode = () => new Float64Array(total);
    this.problem = problem;
    this.distances = problem.distances;
    this.tours = tours;
    this.loadTo = perNode();
    this.edge = perNode();
    this.detour = perNode();
    this.before = perNode();
    this.full = perNode();
    this.after = perNode();
    this.onward = perNode();
    this.without = perNode();
    this.beside = perNode();
    this.roomBefore = perNode();
    this.roomAfter = perNode();
    this.reloaded = new Uint8Array(total);
    this.asFull = perNode();
    this.asCount = new Int32Array(total);
    this.beforeCount = new Int32Array(total);
    this.fullCount = new Int32Array(total);
    this.afterCount = new Int32Array(total);
    this.onwardCount = new Int32Array(total);
    this.direct = new Float64Array(routes);
    this.length = new Float64Array(routes);
    this.busy = new Float64Array(routes);
    this.reloads = new Int32Array(routes);
    this.source = new Int32Array(total);
    this.queue = new Int32Array(problem.visits + 2);
    const tables = problem.facilities.map((each) => detours(problem, each));
    this.over = problem.kinds.map((kind) => tables[kind.facilities]?.over ?? new Float64Array(0));
    this.window = new ReloadWindow(this, tours);
    this.stops = problem.kinds.map((kind) => tables[kind.facilities]?.stops ?? new Int32Array(0));
  }

  /** Renews a route with at least one stop. */
  renew(route: number): void {
    this.forward(route);
    this.backward(route);
  }

  /** What the detours grow by, at least, where a stop comes into the gap and no reload is beside it. */
  growthWithout(node: number, route: number): number {
    let growth = this.without[node] as number;
    if (growth === UNKNOWN) {
      const { capacity } = this.problem.kinds[this.problem.kindOf[route] as number] as ReloadKind;
      growth = this.window.through(node, capacity) - (this.length[route] as number) + (this.direct[route] as number);
      growth = Math.max(0, growth);
      this.without[node] = growth;
    }
    return growth;
  }

  /** Brings edges and sums up to date where a customer came between two nodes. Constant time. */
  linked(customer: number, after: number, before: number, route: number): void {
    const { edge, direct, busy } = this;
    const was = edge[after] as number;
    this.join(after, customer, route);
    this.join(customer, before, route);
    direct[route] = (direct[route] as number) + (edge[after] as number) + (edge[customer] as number) - was;
    busy[route] = (busy[route] as number) + (this.problem.service[customer] as number);
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    const { edge, direct, busy } = this;
    const was = (edge[after] as number) + (edge[customer] as number);
    this.join(after, before, route);
    direct[route] = (direct[route] as number) + (edge[after] as number) - was;
    busy[route] = (busy[route] as number) - (this.problem.service[customer] as number);
  }

  /** Reckons edges and sums of a whole route anew. */
  retrace(route: number): void {
    const { tours, edge, problem } = this;
    const sentinel = tours.sentinel(route);
    let [direct, busy, node] = [0, 0, sentinel];
    do {
      const following = tours.next[node] as number;
      this.join(node, following, route);
      direct += edge[node] as number;
      if (node !== sentinel) busy += problem.service[node] as number;
      node = following;
    } while (node !== sentinel);
    this.direct[route] = direct;
    this.busy[route] = busy;
  }

  private join(node: number, following: number, route: number): void {
    const { placeOf, places, visits, kinds, kindOf } = this.problem;
    const number = kindOf[route] as number;
    const { start, end } = kinds[number] as ReloadKind;
    const from = node > visits ? start : (placeOf[node] as number);
    const to = following > visits ? end : (placeOf[following] as number);
    const length = this.distances[from * places + to] as number;
    this.edge[node] = length;
    this.detour[node] = ((this.over[number] as Float64Array)[from * places + to] as number) - length;
  }

  /** Reloads of the route that `lengthAs` reckoned last. */
  reloadsAs = 0;

  /** Length of a route if a vehicle of another kind did it; infinite where that is seen to be no less than `most`. */
  lengthAs(route: number, number: number, most: number): number {
    const { tours, edge, asFull, asCount, queue, loadTo, distances } = this;
    const { placeOf, places, kinds } = this.problem;
    const { start, end, capacity, lastReload } = kinds[number] as ReloadKind;
    const over = this.over[number] as Float64Array;
    const sentinel = tours.sentinel(route);
    const last = tours.prev[sentinel] as number;
    const first = placeOf[tours.next[sentinel] as number] as number;
    const reach = distances[start * places + first] as number;
    const leave = distances[(placeOf[last] as number) * places + end] as number;
    const direct = (this.direct[route] as number) - (edge[sentinel] as number) - (edge[last] as number) + reach + leave;
    if (direct >= most) return Number.POSITIVE_INFINITY;
    let [head, tail] = [0, 1];
    queue[0] = sentinel;
    asFull[sentinel] = 0;
    asCount[sentinel] = 0;
    for (let node = tours.next[sentinel] as number; ; node = tours.next[node] as number) {
      const load = loadTo[node] as number;
      while (head < tail && load - (loadTo[queue[head] as number] as number) > capacity) head += 1;
      if (head === tail) return Number.POSITIVE_INFINITY;
      const from = queue[head] as number;
      const to = node === last ? end : (placeOf[tours.next[node] as number] as number);
      const length = node === last ? leave : (edge[node] as number);
      const detour = (over[(placeOf[node] as number) * places + to] as number) - length;
      this.reloadsAs = (asCount[from] as number) + (node === last && !lastReload ? 0 : 1);
      const sum = (asFull[from] as number) + (node === last && !lastReload ? 0 : detour);
      if (node === last) return direct + sum;
      asFull[node] = sum;
      asCount[node] = this.reloadsAs;
      while (tail > head && (asFull[queue[tail - 1] as number] as number) >= sum) tail -= 1;
      queue[tail] = node;
      tail += 1;
    }
  }

  /** Least detours up to every gap. */
  private forward(route: number): void {
    const { tours, loadTo, detour, before, beforeCount, full, fullCount, queue, source } = this;
    const { demand, kinds, kindOf } = this.problem;
    const { next } = tours;
    const { capacity, lastReload } = kinds[kindOf[route] as number] as ReloadKind;
    const sentinel = tours.sentinel(route);
    let [head, tail, load, last] = [0, 1, 0, sentinel];
    queue[0] = sentinel;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      load += demand[node] as number;
      loadTo[node] = load;
      while (head < tail && load - (loadTo[queue[head] as number] as number) > capacity) head += 1;
      const from = head < tail ? (queue[head] as number) : -1;
      const least = from < 0 ? Number.POSITIVE_INFINITY : (full[from] as number);
      const count = from < 0 ? 0 : (fullCount[from] as number);
      const sum = least + (detour[node] as number);
      source[node] = from;
      before[node] = least;
      beforeCount[node] = count;
      full[node] = sum;
      fullCount[node] = count + 1;
      while (tail > head && (full[queue[tail - 1] as number] as number) >= sum) tail -= 1;
      queue[tail] = node;
      tail += 1;
      last = node;
    }
    this.length[route] = (this.direct[route] as number) + ((lastReload ? full[last] : before[last]) as number);
    this.reloads[route] = (lastReload ? fullCount[last] : beforeCount[last]) as number;
  }

  /** Least detours from every gap on, and what is left in each as the route is reloaded now. */
  private backward(route: number): void {
    const { tours, loadTo, detour, after, afterCount, onward, onwardCount, queue, before, source } = this;
    const { without, beside, roomBefore, roomAfter, reloaded } = this;
    const { prev } = tours;
    const { capacity, lastReload } = this.problem.kinds[this.problem.kindOf[route] as number] as ReloadKind;
    const sentinel = tours.sentinel(route);
    const last = prev[sentinel] as number;
    const least = (this.length[route] as number) - (this.direct[route] as number);
    let [head, tail] = [0, 0];
    let from = last;
    let room = 0;
    for (let node = last; node !== sentinel; node = prev[node] as number) {
      const load = loadTo[node] as number;
      while (head < tail && (loadTo[queue[head] as number] as number) - load > capacity) head += 1;
      const to = head < tail ? (queue[head] as number) : -1;
      const rest = to < 0 ? (node === last ? 0 : Number.POSITIVE_INFINITY) : (onward[to] as number);
      const count = to < 0 ? 0 : (onwardCount[to] as number);
      const ends = node === last && !lastReload;
      const sum = ends ? 0 : rest + (detour[node] as number);
      after[node] = rest;
      afterCount[node] = count;
      onward[node] = sum;
      onwardCount[node] = ends ? 0 : count + 1;
      while (tail > head && (onward[queue[tail - 1] as number] as number) >= sum) tail -= 1;
      queue[tail] = node;
      tail += 1;
      roomAfter[node] = room;
      beside[node] = (before[node] as number) + rest - least;
      const here = node === from;
      if (here) {
        from = source[node] as number;
        room = from < 0 ? 0 : capacity - load + (loadTo[from] as number);
      }
      reloaded[node] = here ? 1 : 0;
      without[node] = here ? UNKNOWN : 0;
      roomBefore[node] = room;
    }
    this.closeLast(last, lastReload);
    roomBefore[sentinel] = room;
    after[sentinel] = least;
    afterCount[sentinel] = this.reloads[route] as number;
  }

  /** The gap after the last stop holds the reload that must be there, or none. */
  private closeLast(last: number, lastReload: boolean): void {
    this.reloaded[last] = lastReload ? 1 : 0;
    this.without[last] = lastReload ? Number.POSITIVE_INFINITY : 0;
    this.roomAfter[last] = UNKNOWN;
  }

  /** Visits of a route in order, and the facility of each reload as -1 - place. */
  stopsOf(route: number): readonly number[] {
    const { problem, tours, source } = this;
    const kind = problem.kindOf[route] as number;
    const { end, lastReload } = problem.kinds[kind] as (typeof problem.kinds)[number];
    const stops = this.stops[kind] as Int32Array;
    const sentinel = tours.sentinel(route);
    const facilityAfter = (node: number): number => {
      const next = tours.next[node] as number;
      const to = next === sentinel ? end : (problem.placeOf[next] as number);
      return -1 - (stops[(problem.placeOf[node] as number) * problem.places + to] as number);
    };
    const last = tours.prev[sentinel] as number;
    const reloads = new Set<number>(lastReload ? [last] : []);
    for (let node = source[last] as number; node !== sentinel && node >= 0; node = source[node] as number)
      reloads.add(node);
    const list: number[] = [];
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      list.push(node);
      if (reloads.has(node)) list.push(facilityAfter(node));
    }
    return list;
  }
}
