import type { Random } from '../../base/index.ts';
import type { FoundRoute, Order, RouteModel, Screen, Tours } from '../engine/index.ts';
import { Drivers } from './drivers.ts';
import { Edges } from './edges.ts';
import { meanEdgeOf, USUAL_HEAT } from './heat.ts';
import { nearness } from './neighbours.ts';
import { ordersOf } from './orders.ts';
import { Releases } from './releases.ts';
import { Segments } from './segments.ts';
import type { Fleet, RoutingProblem } from './types.ts';
import { EVERY_KIND, Vehicles } from './vehicles.ts';

/** With windows or a longest day: hotter. Where kinds are free to choose they settle late, long before the order of customers does. */
const TIMED_HEAT = { start: 1.5, end: 0.04 };
const MIXED_HEAT = { start: 0.7, end: 0.018 };
/**
 * How often far positions are looked at where no near one will do: a step with nothing near rarely pays. More often where windows and a
 * longest day rule out much of what is near.
 */
const FAR_SHARE = 0.15;
const TIMED_FAR_SHARE = 0.5;
/**
 * How often a route of a limited fleet changes vehicles by chance: before customers are put back, or after it where there are windows
 * or a longest day, as the change then most often costs nothing.
 */
const CHANGE_SHARE = 0.3;
const SHUFFLE_SHARE = 0.4;
/**
 * Where vehicles do not run out: how often a route keeps a kind drawn by chance while customers are put back, and how often kinds drawn
 * by chance are not given out. Else a larger vehicle is never taken before it is full, and several small ones never replace a large one.
 */
const KEEP_SHARE = 0.4;
const WITHHOLD_SHARE = 0.3;

/**
 * Vehicles that differ in capacity, cost, and where they may go; windows and a longest day where the problem has them. A route has no
 * vehicle of its own: each carries the kind it is driven by, which an insertion may change for another kind that has a vehicle free,
 * or whose vehicle another route gives up. Costs are integers.
 */
export class FleetModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly screen: Screen;
  readonly heat;
  readonly growing = true;
  readonly farShare: number;
  readonly vehicleCounts: Int32Array;
  readonly costOf: ((route: number, kind: number) => number) | undefined;
  readonly combinesParts = true;
  way = 0;
  readonly vehicles: Vehicles;
  private readonly drivers: Drivers;
  private readonly allowed: Int32Array;
  private readonly edges: Edges;
  private readonly times: Segments | null;
  private readonly mostDuration: number;
  /** Whether vehicles of some kind may run out, and whether some may not go everywhere. */
  private readonly limited: boolean;
  private readonly restricted: boolean;
  private readonly bestDriver: Int32Array;
  private readonly fleet: Fleet;
  private readonly random: Random;
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
    this.allowed = fleet.allowed;
    this.vehicles = new Vehicles(problem, fleet, routes);
    this.drivers = new Drivers(this.vehicles, problem.demand, fleet.allowed);
    this.edges = new Edges(this, problem.cost, routes, this.vehicles.cheapest);
    this.screen = this.edges.screen;
    const timed = problem.windows !== null || Number.isFinite(fleet.mostDuration);
    this.times = timed ? new Segments(problem, routes) : null;
    this.mostDuration = fleet.mostDuration;
    this.limited = fleet.kinds.some((each) => each.vehicles.length < routes);
    if (this.limited && this.vehicles.kinds > 1 && this.vehicles.alike) {
      this.vehicles.releases = new Releases(this.vehicles, this.drivers);
    }
    const usual = this.limited ? USUAL_HEAT : MIXED_HEAT;
    this.heat = timed ? TIMED_HEAT : usual;
    this.farShare = timed ? TIMED_FAR_SHARE : FAR_SHARE;
    this.costOf = timed ? (route, kind) => this.drivers.costBy(kind, route) : undefined;
    const everywhere = 2 ** fleet.kinds.length - 1;
    this.restricted = fleet.allowed.some((each, node) => node > 0 && (each & everywhere) !== everywhere);
    this.bestDriver = new Int32Array(routes);
    this.vehicleCounts = Int32Array.from(fleet.kinds, (each) => each.vehicles.length);
  }

  get cost(): number {
    return this.drivers.cost;
  }

  bind(tours: Tours): void {
    this.tours = tours;
    this.drivers.bind(tours);
    this.vehicles.releases?.bind(tours);
  }

  linked(customer: number, after: number, before: number, route: number): void {
    this.drivers.added(customer, route, this.edges.link(customer, after, before));
  }

  unlinked(customer: number, after: number, before: number, route: number): void {
    this.drivers.removed(customer, route, this.edges.unlink(customer, after, before));
  }

  renew(route: number): void {
    const { tours, allowed } = this;
    if (this.restricted) {
      const sentinel = tours.sentinel(route);
      let mask = -1;
      for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
        mask &= allowed[node] as number;
      }
      this.drivers.mask[route] = mask;
    }
    this.times?.renew(tours, route);
    this.drivers.forget(route);
  }

  /** What `admits` and `price` let in can be driven. */
  holds(): boolean {
    return true;
  }

  admits(customer: number, route: number, most: number): boolean {
    return this.drivers.admits(customer, route, most);
  }

  bound(customer: number, after: number): number {
    const { tours, times, drivers } = this;
    const route = tours.routeOf[after] as number;
    const before = tours.next[after] as number;
    if (times?.tooLate(customer, after, before) === true) return Number.POSITIVE_INFINITY;
    const more = this.edges.added(customer, after, before);
    return (drivers.base[route] as number) + (drivers.unit[route] as number) * more;
  }

  price(customer: number, after: number, bound: number): number {
    const { tours, times, drivers } = this;
    const route = tours.routeOf[after] as number;
    const before = tours.next[after] as number;
    if (times !== null && times.spanWith(customer, after, before) > this.mostDuration) return Number.POSITIVE_INFINITY;
    this.way = drivers.only[route] as number;
    if (this.way >= 0) return bound;
    const price = drivers.priceOf(customer, route, this.edges.added(customer, after, before));
    this.way = this.vehicles.found;
    return price;
  }

  /** The route changes for the kind of vehicle that the price was for. */
  prepare(_customer: number, after: number, way: number): void {
    this.drivers.obtain(this.tours.routeOf[after] as number, way);
  }

  restore(route: number, kind: number): void {
    this.drivers.restore(route, kind);
  }

  /** Each route that changed gets the kind that now costs it least; then some kinds change by chance. */
  loosen(): void {
    const { vehicles, drivers, random } = this;
    drivers.keep(-1);
    vehicles.offer(EVERY_KIND);
    if (vehicles.releases !== null) vehicles.changed();
    drivers.cheapen();
    if (vehicles.kinds === 1 || this.tours.touchedCount === 0) return;
    if (this.limited) {
      if (this.times === null && random.unit() < CHANGE_SHARE) drivers.change(random);
      return;
    }
    if (random.unit() < WITHHOLD_SHARE) vehicles.offer(random.below(2 ** vehicles.kinds));
    if (random.unit() < KEEP_SHARE) drivers.keep(drivers.change(random));
  }

  /** Each route that changed gets the kind that costs it least; then routes swap vehicles where that saves something. */
  settle(): void {
    const { tours, vehicles, drivers, random } = this;
    drivers.keep(-1);
    vehicles.offer(EVERY_KIND);
    drivers.cheapen();
    const touched = tours.touchedCount;
    if (!this.limited || touched === 0) return;
    for (let at = 0; at < touched; at += 1) drivers.trade(tours.touched[at] as number);
    if (this.times !== null && random.unit() < SHUFFLE_SHARE) drivers.change(random);
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours, this.cost);
  }

  /** Takes note of who drives which route in the best solution. */
  keep(): void {
    this.bestDriver.set(this.vehicles.driver);
  }

  /** The kind that drives a route of the best solution. */
  noteOf(route: number): number {
    return this.bestDriver[route] as number;
  }

  takeUp(routes: readonly FoundRoute[]): void {
    for (const { route, note } of routes) if (note !== undefined) this.drivers.drive(route, note);
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
}
