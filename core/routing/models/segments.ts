import type { Tours } from '../engine/index.ts';
import type { RoutingProblem } from './types.ts';

/**
 * What is known of the times of a stretch of a route: the least time it takes (waiting included), and the earliest and latest start
 * that take no longer. A start before the earliest only waits.
 *
 * Two stretches join in constant time, so that an insertion needs what lies before and what lies after, and no walk. Source: Vidal,
 * Crainic, Gendreau and Prins, "A hybrid genetic algorithm with adaptive diversity management for a large class of vehicle routing
 * problems with time windows", Computers & Operations Research 40(1), 2013, section 4.2 (there with time warps).
 */
export class Segments {
  private readonly customers: number;
  private readonly time: Int32Array;
  private readonly service: Int32Array;
  private readonly open: Int32Array;
  private readonly close: Int32Array;
  /** From leaving the depot to the end of the service at each node. */
  private readonly spanTo: Int32Array;
  private readonly earliestTo: Int32Array;
  private readonly latestTo: Int32Array;
  /** Earliest end of the service at each node. */
  private readonly readyAt: Int32Array;
  /** From the start of the service at each node to the return. */
  private readonly spanFrom: Int32Array;
  private readonly earliestFrom: Int32Array;
  private readonly latestFrom: Int32Array;

  constructor(problem: RoutingProblem, routes: number) {
    const { customers, windows } = problem;
    const total = customers + 1 + routes;
    this.customers = customers;
    this.time = problem.time;
    this.service = problem.service;
    this.open = windows?.open ?? new Int32Array(customers + 1);
    this.close = windows?.close ?? new Int32Array(customers + 1).fill(FAR);
    this.spanTo = new Int32Array(total);
    this.earliestTo = new Int32Array(total).fill(this.open[0] as number);
    this.latestTo = new Int32Array(total).fill(this.close[0] as number);
    this.readyAt = this.earliestTo.slice();
    this.spanFrom = new Int32Array(total);
    this.earliestFrom = this.earliestTo.slice();
    this.latestFrom = this.latestTo.slice();
  }

  /** Brings what is known along a route up to date. */
  renew(tours: Tours, route: number): void {
    const { open, close, service } = this;
    const { next, prev } = tours;
    const sentinel = tours.sentinel(route);
    let before = sentinel;
    for (let node = next[sentinel] as number; node !== sentinel; node = next[node] as number) {
      const reach = (this.spanTo[before] as number) + this.travel(before, node);
      const latest = this.latestTo[before] as number;
      const wait = Math.max(0, (open[node] as number) - reach - latest);
      this.spanTo[node] = reach + wait + (service[node] as number);
      this.earliestTo[node] = Math.max((open[node] as number) - reach, this.earliestTo[before] as number) - wait;
      this.readyAt[node] = (this.earliestTo[node] as number) + (this.spanTo[node] as number);
      this.latestTo[node] = Math.min((close[node] as number) - reach, latest);
      before = node;
    }
    let after = sentinel;
    for (let node = prev[sentinel] as number; node !== sentinel; node = prev[node] as number) {
      const reach = (service[node] as number) + this.travel(node, after);
      const wait = Math.max(0, (this.earliestFrom[after] as number) - reach - (close[node] as number));
      this.spanFrom[node] = reach + wait + (this.spanFrom[after] as number);
      this.earliestFrom[node] = Math.max((this.earliestFrom[after] as number) - reach, open[node] as number) - wait;
      this.latestFrom[node] = Math.min((this.latestFrom[after] as number) - reach, close[node] as number);
      after = node;
    }
  }

  /** Whether a customer between two nodes is reached too late, or its follower is, even if no way took any time. */
  tooLate(customer: number, after: number, before: number): boolean {
    if ((this.readyAt[after] as number) > (this.close[customer] as number)) return true;
    return (this.open[customer] as number) + (this.service[customer] as number) > (this.latestFrom[before] as number);
  }

  /** Least time that the route takes with a customer between two nodes; infinite where somebody is reached too late. */
  spanWith(customer: number, after: number, before: number): number {
    const reach = (this.spanTo[after] as number) + this.travel(after, customer);
    const opens = this.open[customer] as number;
    const closes = this.close[customer] as number;
    const early = this.earliestTo[after] as number;
    const late = this.latestTo[after] as number;
    if (early + reach > closes) return Number.POSITIVE_INFINITY;
    const wait = Math.max(0, opens - reach - late);
    const span = reach + wait + (this.service[customer] as number) + this.travel(customer, before);
    const earliest = Math.max(opens - reach, early) - wait;
    if (earliest + span > (this.latestFrom[before] as number)) return Number.POSITIVE_INFINITY;
    const latest = Math.min(closes - reach, late);
    const further = Math.max(0, (this.earliestFrom[before] as number) - span - latest);
    return span + further + (this.spanFrom[before] as number);
  }

  get opening(): number {
    return this.open[0] as number;
  }

  get closing(): number {
    return this.close[0] as number;
  }

  /** When a vehicle that leaves at a time is back from a route as it stands; `NEVER` where it comes too late to somebody. */
  back(tours: Tours, route: number, leaves: number): number {
    const first = tours.next[tours.sentinel(route)] as number;
    return this.goOn(first, leaves + this.travel(tours.sentinel(route), first));
  }

  /** Latest time to leave for a route and be back by a time; before any opening where that cannot be. */
  latestLeave(tours: Tours, route: number, due: number): number {
    const first = tours.next[tours.sentinel(route)] as number;
    const span = this.spanFrom[first] as number;
    if ((this.earliestFrom[first] as number) + span > due) return -NEVER;
    const arrival = Math.min(this.latestFrom[first] as number, due - span);
    return arrival - this.travel(tours.sentinel(route), first);
  }

  /** The same as `back` with a customer between two nodes. */
  backWith(customer: number, after: number, before: number, leaves: number): number {
    if (leaves > (this.latestTo[after] as number)) return NEVER;
    const departs = Math.max(leaves, this.earliestTo[after] as number) + (this.spanTo[after] as number);
    const arrival = departs + this.travel(after, customer);
    if (arrival > (this.close[customer] as number)) return NEVER;
    const start = Math.max(arrival, this.open[customer] as number);
    return this.goOn(before, start + (this.service[customer] as number) + this.travel(customer, before));
  }

  /** The same for a route of one customer. */
  backAlone(customer: number, leaves: number): number {
    const depot = this.customers + 1;
    return this.backWith(customer, depot, depot, leaves);
  }

  /** When a vehicle that reaches a node at a time is back. */
  private goOn(node: number, arrival: number): number {
    if (arrival > (this.latestFrom[node] as number)) return NEVER;
    return Math.max(arrival, this.earliestFrom[node] as number) + (this.spanFrom[node] as number);
  }

  private travel(from: number, to: number): number {
    const { customers, time } = this;
    const row = from > customers ? 0 : from * (customers + 1);
    return time[to > customers ? row : row + to] as number;
  }
}

/** Later than any time there is; sums of two still fit. */
const NEVER = 2 ** 30 - 1;
/** Later than any time of a problem without windows. */
const FAR = 2 ** 30;
