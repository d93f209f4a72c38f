import type { Tours } from '../engine/index.ts';
import { detours, type ReloadProblem } from './reload-problem.ts';

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
  /** Per route: distance without and with reloads, their number, and service times. */
  readonly direct: Float64Array;
  readonly length: Float64Array;
  readonly reloads: Int32Array;
  readonly busy: Float64Array;
  /** Per kind: place of the start and of the end, and the lengths over a facility. */
  readonly over: readonly Float64Array[];
  private readonly stops: readonly Int32Array[];
  /** The gap before which the last reload lies that leads to `before`. */
  private readonly source: Int32Array;
  private readonly queue: Int32Array;
  private readonly problem: ReloadProblem;
  private readonly tours: Tours;

  constructor(problem: ReloadProblem, tours: Tours) {
    const total = problem.visits + 1 + problem.kindOf.length;
    const routes = problem.kindOf.length;
    const perNode = () => new Float64Array(total);
    this.problem = problem;
    this.tours = tours;
    this.loadTo = perNode();
    this.edge = perNode();
    this.detour = perNode();
    this.before = perNode();
    this.full = perNode();
    this.after = perNode();
    this.onward = perNode();
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
    this.stops = problem.kinds.map((kind) => tables[kind.facilities]?.stops ?? new Int32Array(0));
  }

  /** Renews a route with at least one stop. */
  renew(route: number): void {
    this.forward(route);
    this.backward(route);
  }

  private forward(route: number): void {
    const { problem, tours, loadTo, edge, detour, before, beforeCount, full, fullCount, queue, source } = this;
    const { distances, placeOf, demand, service, places } = problem;
    const { next } = tours;
    const kind = problem.kindOf[route] as number;
    const { start, end, capacity, lastReload } = problem.kinds[kind] as (typeof problem.kinds)[number];
    const over = this.over[kind] as Float64Array;
    const sentinel = tours.sentinel(route);
    let [head, tail, load, length, busy, place] = [0, 1, 0, 0, 0, start];
    queue[0] = sentinel;
    let last = sentinel;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const to = placeOf[node] as number;
      const row = place * places + to;
      const step = distances[row] as number;
      length += step;
      edge[last] = step;
      if (last !== sentinel) tail = this.reloadAfter(last, (over[row] as number) - step, head, tail);
      load += demand[node] as number;
      busy += service[node] as number;
      loadTo[node] = load;
      while (head < tail && load - (loadTo[queue[head] as number] as number) > capacity) head += 1;
      const from = head < tail ? (queue[head] as number) : -1;
      source[node] = from;
      before[node] = from < 0 ? Number.POSITIVE_INFINITY : (full[from] as number);
      beforeCount[node] = from < 0 ? 0 : (fullCount[from] as number);
      last = node;
      place = to;
    }
    const row = place * places + end;
    const step = distances[row] as number;
    length += step;
    edge[last] = step;
    detour[last] = (over[row] as number) - step;
    full[last] = (before[last] as number) + (detour[last] as number);
    fullCount[last] = (beforeCount[last] as number) + 1;
    this.direct[route] = length;
    this.busy[route] = busy;
    this.length[route] = length + ((lastReload ? full[last] : before[last]) as number);
    this.reloads[route] = (lastReload ? fullCount[last] : beforeCount[last]) as number;
    loadTo[sentinel] = 0;
  }

  /** Enters a reload in the gap of a node into the queue of reloads, cheapest first, in order along the route. */
  private reloadAfter(node: number, more: number, head: number, tail: number): number {
    const { queue, full, fullCount, before, beforeCount } = this;
    const sum = (before[node] as number) + more;
    this.detour[node] = more;
    full[node] = sum;
    fullCount[node] = (beforeCount[node] as number) + 1;
    let end = tail;
    while (end > head && (full[queue[end - 1] as number] as number) >= sum) end -= 1;
    queue[end] = node;
    return end + 1;
  }

  private backward(route: number): void {
    const { problem, tours, loadTo, detour, after, afterCount, onward, onwardCount, queue } = this;
    const { prev } = tours;
    const { capacity, lastReload } = problem.kinds[problem.kindOf[route] as number] as (typeof problem.kinds)[number];
    const sentinel = tours.sentinel(route);
    const last = prev[sentinel] as number;
    let [head, tail] = [0, 0];
    after[last] = 0;
    afterCount[last] = 0;
    onward[last] = lastReload ? (detour[last] as number) : 0;
    onwardCount[last] = lastReload ? 1 : 0;
    queue[tail] = last;
    tail += 1;
    for (let node = prev[last] as number; node !== sentinel; node = prev[node] as number) {
      const load = loadTo[node] as number;
      while (head < tail && (loadTo[queue[head] as number] as number) - load > capacity) head += 1;
      const to = head < tail ? (queue[head] as number) : -1;
      after[node] = to < 0 ? Number.POSITIVE_INFINITY : (onward[to] as number);
      afterCount[node] = to < 0 ? 0 : (onwardCount[to] as number);
      const sum = (after[node] as number) + (detour[node] as number);
      onward[node] = sum;
      onwardCount[node] = (afterCount[node] as number) + 1;
      while (tail > head && (onward[queue[tail - 1] as number] as number) >= sum) tail -= 1;
      queue[tail] = node;
      tail += 1;
    }
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
