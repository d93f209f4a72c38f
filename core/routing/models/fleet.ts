import type { Random } from '../../base/index.ts';
import type { FoundRoute, Order, RouteModel, Screen, Tours } from '../engine/index.ts';
import { Edges } from './edges.ts';
import { meanEdgeOf, USUAL_HEAT } from './heat.ts';
import { nearness } from './neighbours.ts';
import { ordersOf } from './orders.ts';
import { Segments } from './segments.ts';
import type { Fleet, RoutingProblem } from './types.ts';
import { Vehicles } from './vehicles.ts';

const TIMED_HEAT = { start: 2, end: 0.01 };
/** How often routes change vehicles at no cost after a step. */
const SHUFFLE_SHARE = 0.4;

/**
 * Vehicles that differ in capacity, cost, and where they may go; windows and a longest day where the problem has them. A route has no
 * vehicle of its own: each carries the kind it is driven by, which an insertion may change for another kind that has a vehicle free.
 * Costs are integers.
 */
export class FleetModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly screen: Screen;
  readonly heat;
  readonly growing: boolean;
  cost = 0;
  way = 0;
  readonly vehicles: Vehicles;
  private readonly allowed: Int32Array;
  private readonly demand: Int32Array;
  private readonly edges: Edges;
  private readonly times: Segments | null;
  private readonly mostDuration: number;
  /** Whether vehicles of some kind may run out, and whether some may not go everywhere. */
  private readonly limited: boolean;
  private readonly restricted: boolean;
  private readonly bestDriver: Int32Array;
  private readonly fleet: Fleet;
  private readonly random: Random;
  private readonly load: Int32Array;
  private readonly length: Float64Array;
  /** Kinds that may go to every customer of a route. */
  private readonly mask: Int32Array;
  /** Least cost of each route as it stands, by a kind that is free or its own. */
  private readonly least: Float64Array;
  private tours!: Tours;

  constructor(problem: RoutingProblem, fleet: Fleet, random: Random) {
    const { customers } = problem;
    const routes = Math.min(customers, problem.vehicles);
    this.customers = customers;
    this.fleet = fleet;
    this.random = random;
    this.kindOf = new Int32Array(routes);
    ({ near: this.near, nearWidth: this.nearWidth } = nearness(problem));
    this.orders = ordersOf(problem);
    this.demand = problem.demand;
    this.allowed = fleet.allowed;
    this.vehicles = new Vehicles(problem, fleet, routes);
    this.edges = new Edges(this, problem.cost, routes, this.vehicles.cheapest);
    this.screen = this.edges.screen;
    const timed = problem.windows !== null || Number.isFinite(fleet.mostDuration);
    this.times = timed ? new Segments(problem, routes) : null;
    this.heat = timed ? TIMED_HEAT : USUAL_HEAT;
    const [{ fixed, perLength } = { fixed: 0, perLength: 1 }] = fleet.kinds;
    this.growing = fleet.kinds.every((each) => each.fixed === fixed && each.perLength === perLength);
    this.mostDuration = fleet.mostDuration;
    this.limited = fleet.kinds.some((each) => each.vehicles.length < routes);
    const everywhere = 2 ** fleet.kinds.length - 1;
    this.restricted = fleet.allowed.some((each, node) => node > 0 && (each & everywhere) !== everywhere);
    this.bestDriver = new Int32Array(routes);
    this.load = new Int32Array(routes);
    this.length = new Float64Array(routes);
    this.mask = new Int32Array(routes).fill(-1);
    this.least = new Float64Array(routes);
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  linked(customer: number, after: number, before: number, route: number): void {
    const { vehicles, load, length } = this;
    const kind = vehicles.driver[route] as number;
    const more = this.edges.link(customer, after, before);
    if (this.tours.size[route] === 1) {
      this.cost += vehicles.fixed[kind] as number;
      vehicles.free[kind] = (vehicles.free[kind] as number) - 1;
    }
    this.cost += (vehicles.perLength[kind] as number) * more;
    length[route] = (length[route] as number) + more;
    load[route] = (load[route] as number) + (this.demand[customer] as number);
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    const { vehicles, load, length } = this;
    const kind = vehicles.driver[route] as number;
    const less = this.edges.unlink(customer, after, before);
    if (this.tours.size[route] === 0) {
      this.cost -= vehicles.fixed[kind] as number;
      vehicles.free[kind] = (vehicles.free[kind] as number) + 1;
    }
    this.cost -= (vehicles.perLength[kind] as number) * less;
    length[route] = (length[route] as number) - less;
    load[route] = (load[route] as number) - (this.demand[customer] as number);
  }

  renew(route: number): void {
    const { tours, allowed } = this;
    const sentinel = tours.sentinel(route);
    let mask = -1;
    if (this.restricted) {
      for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
        mask &= allowed[node] as number;
      }
    }
    this.mask[route] = mask;
    this.times?.renew(tours, route);
    this.least[route] = tours.size[route] === 0 ? 0 : this.leastOf(route, mask, 0, 0);
  }

  /** What `admits` and `price` let in can be driven. */
  holds(): boolean {
    return true;
  }

  admits(customer: number, route: number): boolean {
    const { vehicles } = this;
    const mask = (this.mask[route] as number) & (this.allowed[customer] as number);
    const load = (this.load[route] as number) + (this.demand[customer] as number);
    const own = this.ownKind(route);
    for (let kind = vehicles.kinds - 1; kind >= 0; kind -= 1) {
      if ((vehicles.capacity[kind] as number) < load || ((mask >> kind) & 1) === 0) continue;
      if (kind === own || (vehicles.free[kind] as number) > 0) return true;
    }
    return false;
  }

  bound(customer: number, after: number): number {
    return this.vehicles.cheapest * this.edges.added(customer, after, this.tours.next[after] as number);
  }

  price(customer: number, after: number): number {
    const { tours, times } = this;
    const route = tours.routeOf[after] as number;
    const before = tours.next[after] as number;
    if (times !== null && times.spanWith(customer, after, before) > this.mostDuration) return Number.POSITIVE_INFINITY;
    const mask = (this.mask[route] as number) & (this.allowed[customer] as number);
    const more = this.edges.added(customer, after, before);
    const cost = this.leastOf(route, mask, this.demand[customer] as number, more);
    this.way = this.vehicles.found;
    if (this.way < 0) return Number.POSITIVE_INFINITY;
    return cost - (this.least[route] as number);
  }

  /** The route changes for the kind of vehicle that the price was for. */
  prepare(_customer: number, after: number, way: number): void {
    this.drive(this.tours.routeOf[after] as number, way);
  }

  restore(route: number, kind: number): void {
    this.swapDriver(route, kind);
  }

  /** Each route that changed gets the kind that costs it least; then routes swap vehicles where that saves something. */
  settle(): void {
    const { tours, vehicles } = this;
    for (let at = 0; at < tours.touchedCount; at += 1) {
      const route = tours.touched[at] as number;
      if (tours.size[route] === 0) continue;
      this.leastOf(route, this.mask[route] as number, 0, 0);
      this.drive(route, vehicles.found);
    }
    if (!this.limited) return;
    const touched = tours.touchedCount;
    for (let at = 0; at < touched; at += 1) this.trade(tours.touched[at] as number);
    if (this.times !== null && this.random.unit() < SHUFFLE_SHARE) this.shuffle(touched);
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours, this.cost);
  }

  /** Takes note of who drives which route in the best solution. */
  keep(): void {
    this.bestDriver.set(this.vehicles.driver);
  }

  /** Routes of the best solution, one list for every vehicle of the fleet. */
  byVehicle(found: readonly FoundRoute[]): readonly (readonly number[])[] {
    const left = this.fleet.kinds.map((each) => [...each.vehicles].reverse());
    const lists: (readonly number[])[] = Array.from({ length: left.flat().length }, () => []);
    for (const { route, customers } of found) {
      const vehicle = left[this.bestDriver[route] as number]?.pop();
      if (vehicle !== undefined) lists[vehicle] = customers;
    }
    return lists;
  }

  private ownKind(route: number): number {
    return this.tours.size[route] === 0 ? -1 : (this.vehicles.driver[route] as number);
  }

  private leastOf(route: number, mask: number, moreLoad: number, moreLength: number): number {
    const load = (this.load[route] as number) + moreLoad;
    return this.vehicles.leastCost(this.ownKind(route), mask, load, (this.length[route] as number) + moreLength);
  }

  private drive(route: number, kind: number): void {
    const before = this.vehicles.driver[route] as number;
    if (before === kind) return;
    this.tours.changed(route, route, before);
    this.swapDriver(route, kind);
  }

  private swapDriver(route: number, kind: number): void {
    const { vehicles } = this;
    if ((this.tours.size[route] as number) > 0) {
      const before = vehicles.driver[route] as number;
      const length = this.length[route] as number;
      this.cost += vehicles.costOf(kind, length) - vehicles.costOf(before, length);
      vehicles.free[before] = (vehicles.free[before] as number) + 1;
      vehicles.free[kind] = (vehicles.free[kind] as number) - 1;
    }
    vehicles.driver[route] = kind;
  }

  /** The route swaps vehicles with the other route where that saves most, if any. */
  private trade(route: number): void {
    const { tours, vehicles } = this;
    if (tours.size[route] === 0) return;
    const own = vehicles.driver[route] as number;
    const length = this.length[route] as number;
    let best = 0;
    let partner = -1;
    for (let other = 0; other < tours.routes; other += 1) {
      const kind = vehicles.driver[other] as number;
      if (tours.size[other] === 0 || kind === own) continue;
      const perLength = (vehicles.perLength[kind] as number) - (vehicles.perLength[own] as number);
      const change = perLength * (length - (this.length[other] as number));
      if (change >= best || !this.canDrive(kind, route) || !this.canDrive(own, other)) continue;
      best = change;
      partner = other;
    }
    if (partner < 0) return;
    const kind = vehicles.driver[partner] as number;
    this.drive(partner, own);
    this.drive(route, kind);
  }

  private canDrive(kind: number, route: number): boolean {
    if ((this.load[route] as number) > (this.vehicles.capacity[kind] as number)) return false;
    return (((this.mask[route] as number) >> kind) & 1) === 1;
  }

  /** A route that changed takes, at the same cost, another kind that is free, or that of another route which can take its own. */
  private shuffle(touched: number): void {
    const { tours, vehicles, random } = this;
    const route = tours.touched[random.below(touched)] as number;
    if (tours.size[route] === 0) return;
    const own = vehicles.driver[route] as number;
    const kind = random.below(vehicles.kinds);
    if (kind === own || !this.canDrive(kind, route)) return;
    if ((vehicles.free[kind] as number) > 0) {
      this.drive(route, kind);
      return;
    }
    const from = random.below(tours.routes);
    for (let step = 0; step < tours.routes; step += 1) {
      const other = (from + step) % tours.routes;
      if (tours.size[other] === 0 || vehicles.driver[other] !== kind || !this.canDrive(own, other)) continue;
      this.drive(other, own);
      this.drive(route, kind);
      return;
    }
  }
}
