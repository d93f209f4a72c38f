import type { Random } from '../../base/index.ts';
import type { Tours } from '../engine/index.ts';
import type { Vehicles } from './vehicles.ts';

/**
 * Which kind of vehicle drives each route, what that costs, and what a customer adds to it. A route is driven by any kind that may
 * go to all its customers, carries their goods and has a vehicle free.
 */
export class Drivers {
  /** Of all routes as they stand. */
  cost = 0;
  /** Per route. */
  readonly load: Int32Array;
  readonly length: Float64Array;
  /** Kinds that may go to every customer of a route, as a bit mask. */
  readonly mask: Int32Array;
  /**
   * Per route, for the customer that was last looked at there: what its load alone adds to the cost, and the least that a unit of
   * length costs then, each by a kind that may drive the route with it; and the kind that is best by both, -1 where no single one is.
   */
  readonly base: Float64Array;
  readonly unit: Float64Array;
  readonly only: Int32Array;
  /** Customer and state of the fleet for which these hold; 0 for none. */
  private readonly askedFor: Int32Array;
  private readonly askedAt: Int32Array;
  /** Least cost of each route as it stands, and the state of the fleet for which that holds. */
  private readonly now: Float64Array;
  private readonly nowAt: Int32Array;
  /** Route that keeps its kind while customers are put back; -1 for none. */
  private kept = -1;
  private readonly vehicles: Vehicles;
  private readonly demand: Int32Array;
  private readonly allowed: Int32Array;
  private tours!: Tours;

  constructor(vehicles: Vehicles, demand: Int32Array, allowed: Int32Array) {
    const routes = vehicles.driver.length;
    this.vehicles = vehicles;
    this.demand = demand;
    this.allowed = allowed;
    this.load = new Int32Array(routes);
    this.length = new Float64Array(routes);
    this.mask = new Int32Array(routes).fill(-1);
    this.base = new Float64Array(routes);
    this.unit = new Float64Array(routes);
    this.only = new Int32Array(routes);
    this.askedFor = new Int32Array(routes);
    this.askedAt = new Int32Array(routes);
    this.now = new Float64Array(routes);
    this.nowAt = new Int32Array(routes);
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  /** A customer was put into the route and made it longer. */
  added(customer: number, route: number, more: number): void {
    const { vehicles, load, length } = this;
    const kind = vehicles.driver[route] as number;
    if (this.tours.size[route] === 1) {
      this.cost += vehicles.fixed[kind] as number;
      vehicles.take(kind);
    }
    this.cost += (vehicles.perLength[kind] as number) * more;
    length[route] = (length[route] as number) + more;
    load[route] = (load[route] as number) + (this.demand[customer] as number);
  }

  /** A customer was taken out of the route and made it shorter. */
  removed(customer: number, route: number, less: number): void {
    const { vehicles, load, length } = this;
    const kind = vehicles.driver[route] as number;
    if (this.tours.size[route] === 0) {
      this.cost -= vehicles.fixed[kind] as number;
      vehicles.giveBack(kind);
    }
    this.cost -= (vehicles.perLength[kind] as number) * less;
    length[route] = (length[route] as number) - less;
    load[route] = (load[route] as number) - (this.demand[customer] as number);
  }

  /** The route changed: what was looked up for it holds no longer. */
  forget(route: number): void {
    this.askedFor[route] = 0;
    this.nowAt[route] = 0;
  }

  /** Whether the customer's load can be taken along by the route for less than `most`. Sets `base`, `unit` and `only`. */
  admits(customer: number, route: number, most: number): boolean {
    if (this.askedFor[route] !== customer || this.askedAt[route] !== this.vehicles.version) this.ask(customer, route);
    return (this.base[route] as number) < most;
  }

  /** What the customer adds to the cost of the route where it makes it so much longer; the kind is then `vehicles.found`. */
  priceOf(customer: number, route: number, more: number): number {
    const { vehicles } = this;
    const mask = (this.mask[route] as number) & (this.allowed[customer] as number);
    const load = (this.load[route] as number) + (this.demand[customer] as number);
    const length = (this.length[route] as number) + more;
    const now = this.leastNow(route);
    return vehicles.leastCost(this.ownKind(route), mask, load, length) - now;
  }

  /** The route is driven by another kind from now on, for which another route may have to change kinds as well. */
  obtain(route: number, kind: number): void {
    const { vehicles } = this;
    const own = this.ownKind(route);
    if (kind !== own && (vehicles.free[kind] as number) <= 0 && vehicles.releases !== null) {
      const { route: other, takes } = vehicles.releases.partner(kind, own);
      this.drive(other, takes);
      vehicles.changed();
    }
    this.drive(route, kind);
  }

  /** The route is driven by another kind from now on; noted so that it can be taken back. */
  drive(route: number, kind: number): void {
    const before = this.vehicles.driver[route] as number;
    if (before === kind) return;
    this.tours.changed(route, route, before);
    this.restore(route, kind);
  }

  restore(route: number, kind: number): void {
    const { vehicles } = this;
    if ((this.tours.size[route] as number) > 0) {
      const before = vehicles.driver[route] as number;
      const length = this.length[route] as number;
      this.cost += vehicles.costOf(kind, length) - vehicles.costOf(before, length);
      vehicles.giveBack(before);
      vehicles.take(kind);
    }
    vehicles.driver[route] = kind;
    this.forget(route);
  }

  /** Each route that was touched gets the kind that costs it least. */
  cheapen(): void {
    const { tours, vehicles } = this;
    for (let at = 0; at < tours.touchedCount; at += 1) {
      const route = tours.touched[at] as number;
      if (tours.size[route] === 0) continue;
      this.leastOf(route);
      this.obtain(route, vehicles.found);
    }
  }

  /** From now on this route keeps its kind as long as that takes what is put into it; -1 for none. */
  keep(route: number): void {
    this.kept = route;
    if (route >= 0) this.forget(route);
  }

  /** The route swaps vehicles with the other route where that saves most, if any. */
  trade(route: number): void {
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

  /** A route that was touched takes, whatever it costs, another kind that is free, or that of a route which can take its own. */
  change(random: Random): number {
    const { tours, vehicles } = this;
    const route = tours.touched[random.below(tours.touchedCount)] as number;
    if (tours.size[route] === 0) return -1;
    const own = vehicles.driver[route] as number;
    const kind = random.below(vehicles.kinds);
    if (kind === own || !this.canDrive(kind, route)) return route;
    if ((vehicles.free[kind] as number) > 0) {
      this.drive(route, kind);
      return route;
    }
    const from = random.below(tours.routes);
    for (let step = 0; step < tours.routes; step += 1) {
      const other = (from + step) % tours.routes;
      if (tours.size[other] === 0 || vehicles.driver[other] !== kind || !this.canDrive(own, other)) continue;
      this.drive(other, own);
      this.drive(route, kind);
      return route;
    }
    return route;
  }

  /** Looks up what there is to know of a customer in a route before its positions are looked at. */
  private ask(customer: number, route: number): void {
    const { vehicles } = this;
    const mask = (this.mask[route] as number) & (this.allowed[customer] as number);
    const load = (this.load[route] as number) + (this.demand[customer] as number);
    const own = this.ownKind(route);
    this.askedFor[route] = customer;
    this.askedAt[route] = vehicles.version;
    if (mask === 0 || load > vehicles.mostCapacity) {
      this.base[route] = Number.POSITIVE_INFINITY;
      return;
    }
    const fits = own >= 0 && load <= (vehicles.capacity[own] as number) && ((mask >> own) & 1) === 1;
    if (fits && (vehicles.alike || route === this.kept)) {
      this.base[route] = 0;
      this.unit[route] = vehicles.perLength[own] as number;
      this.only[route] = own;
      return;
    }
    this.base[route] = this.priceOf(customer, route, 0);
    this.unit[route] = vehicles.leastUnit;
    this.only[route] = vehicles.perLength[vehicles.found] === vehicles.leastUnit ? vehicles.found : -1;
  }

  private leastNow(route: number): number {
    if (this.nowAt[route] !== this.vehicles.version) {
      this.nowAt[route] = this.vehicles.version;
      this.now[route] = this.tours.size[route] === 0 ? 0 : this.leastOf(route);
    }
    return this.now[route] as number;
  }

  private leastOf(route: number): number {
    const { vehicles, mask, load, length } = this;
    return vehicles.leastCost(
      this.ownKind(route),
      mask[route] as number,
      load[route] as number,
      length[route] as number,
    );
  }

  private ownKind(route: number): number {
    return this.tours.size[route] === 0 ? -1 : (this.vehicles.driver[route] as number);
  }

  /** Cost of a route as it stands when a kind drives it; infinite where that cannot. */
  costBy(kind: number, route: number): number {
    if (!this.canDrive(kind, route)) return Number.POSITIVE_INFINITY;
    return this.vehicles.costOf(kind, this.length[route] as number);
  }

  private canDrive(kind: number, route: number): boolean {
    if ((this.load[route] as number) > (this.vehicles.capacity[kind] as number)) return false;
    return (((this.mask[route] as number) >> kind) & 1) === 1;
  }
}
