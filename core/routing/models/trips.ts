import type { Random } from '../../base/index.ts';
import type { FoundRoute, Order, RouteModel, Screen, Tours } from '../engine/index.ts';
import { Edges } from './edges.ts';
import { meanEdgeOf } from './heat.ts';
import { nearness } from './neighbours.ts';
import { ordersOf } from './orders.ts';
import { Schedule } from './schedule.ts';
import { Segments } from './segments.ts';
import type { Fleet, RoutingProblem } from './types.ts';

/** Temperatures as shares of the mean edge: hotter than without windows and several trips, from trials on public instances. */
const TRIPS_HEAT = { start: 1, end: 0.03 } as const;
/** How often a trip is moved in time, or to another vehicle, at no cost after a step. */
const SHUFFLE_SHARE = 0.5;
/** Places that are tried for it. */
const SHUFFLE_TRIES = 4;
/** How often far positions are looked at where no near one will do. */
const FAR_SHARE = 0.15;
/** Costs per length are whole numbers of hundredths. */
const HUNDREDTHS = 100;

/**
 * Like vehicles that come back to the depot for more: each route of the engine is one trip, and each vehicle drives its trips one after
 * the other. A trip leaves when the vehicle is back, and when all its goods are there. Costs are integers.
 */
export class TripsModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly screen: Screen;
  readonly heat = TRIPS_HEAT;
  readonly growing = true;
  readonly farShare = FAR_SHARE;
  cost = 0;
  way = 0;
  private readonly demand: Int32Array;
  private readonly capacity: number;
  private readonly release: Int32Array;
  private readonly perLength: number;
  private readonly edges: Edges;
  private readonly times: Segments;
  private readonly schedule: Schedule;
  private readonly random: Random;
  private readonly load: Int32Array;
  private readonly bestNext: Int32Array;
  private tours!: Tours;

  constructor(problem: RoutingProblem, fleet: Fleet, random: Random) {
    const { customers, demand } = problem;
    this.customers = customers;
    this.random = random;
    this.kindOf = new Int32Array(customers);
    ({ near: this.near, nearWidth: this.nearWidth } = nearness(problem));
    const release = fleet.release ?? new Int32Array(customers + 1);
    this.orders = [...ordersOf(problem), { weight: 2, key: (customer) => release[customer] as number }];
    this.demand = demand;
    this.capacity = problem.capacity;
    this.release = release;
    this.perLength = Math.round((fleet.kinds[0]?.perLength ?? 1) * HUNDREDTHS);
    this.edges = new Edges(this, problem.cost, customers, this.perLength);
    this.screen = this.edges.screen;
    this.times = new Segments(problem, customers);
    this.schedule = new Schedule(this.times, problem.vehicles, customers);
    this.load = new Int32Array(customers);
    this.bestNext = this.schedule.next.slice();
  }

  bind(tours: Tours): void {
    this.tours = tours;
    this.schedule.bind(tours);
  }

  linked(customer: number, after: number, before: number, trip: number): void {
    this.cost += this.perLength * this.edges.link(customer, after, before);
    this.load[trip] = (this.load[trip] as number) + (this.demand[customer] as number);
  }

  unlinked(customer: number, after: number, before: number, trip: number): void {
    this.cost -= this.perLength * this.edges.unlink(customer, after, before);
    this.load[trip] = (this.load[trip] as number) - (this.demand[customer] as number);
  }

  renew(trip: number): void {
    const { tours, release } = this;
    const sentinel = tours.sentinel(trip);
    let latest = 0;
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      latest = Math.max(latest, release[node] as number);
    }
    this.schedule.release[trip] = latest;
    this.times.renew(tours, trip);
    this.schedule.renew(trip);
  }

  /** What `admits` and `price` let in can be driven. */
  holds(): boolean {
    return true;
  }

  admits(customer: number, trip: number): boolean {
    return (this.load[trip] as number) + (this.demand[customer] as number) <= this.capacity;
  }

  bound(customer: number, after: number): number {
    const before = this.tours.next[after] as number;
    if (this.times.tooLate(customer, after, before)) return Number.POSITIVE_INFINITY;
    return this.perLength * this.edges.added(customer, after, before);
  }

  price(customer: number, after: number, bound: number): number {
    const { tours, schedule } = this;
    const trip = tours.routeOf[after] as number;
    if (tours.size[trip] === 0) {
      this.way = schedule.gapFor(customer, this.release[customer] as number, this.random);
      return this.way < 0 ? Number.POSITIVE_INFINITY : bound;
    }
    const leaves = Math.max(schedule.leaves[trip] as number, this.release[customer] as number);
    const back = this.times.backWith(customer, after, tours.next[after] as number, leaves);
    return back > (schedule.due[trip] as number) ? Number.POSITIVE_INFINITY : bound;
  }

  /** A new trip goes where the price was for. */
  prepare(_customer: number, after: number, way: number): void {
    const trip = this.tours.routeOf[after] as number;
    if (this.tours.size[trip] === 0) this.schedule.move(trip, way);
  }

  restore(trip: number, before: number): void {
    this.schedule.restore(trip, before);
  }

  /** Trips that changed move to other times or vehicles now and then, which costs nothing and makes room elsewhere. */
  settle(): void {
    const { tours, schedule, random } = this;
    if (random.unit() >= SHUFFLE_SHARE || tours.touchedCount === 0) return;
    const trip = tours.touched[random.below(tours.touchedCount)] as number;
    if ((tours.size[trip] as number) > 0) schedule.shuffle(trip, SHUFFLE_TRIES, random);
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours, this.cost);
  }

  /** Takes note of who drives which trip when in the best solution. */
  keep(): void {
    this.bestNext.set(this.schedule.next);
  }

  /** Vehicle of a trip of the best solution and its place among those that the vehicle drives, as one number that grows with both. */
  noteOf(trip: number): number {
    const { bestNext, customers } = this;
    let ahead = -1;
    let node = trip;
    for (; node < customers; node = bestNext[node] as number) ahead += 1;
    return (node - customers + 1) * customers - 1 - ahead;
  }

  /** Trips are hung behind those that their vehicle has already, in the order of the notes. */
  takeUp(routes: readonly FoundRoute[]): void {
    const noted = routes.flatMap(({ route, note }) => (note === undefined ? [] : [{ route, note }]));
    noted.sort((one, other) => one.note - other.note);
    for (const { route, note } of noted) this.schedule.append(route, Math.floor(note / this.customers));
  }

  /** Routes of the best solution, one list for every vehicle that is used, 0 between two trips. */
  byVehicle(found: readonly FoundRoute[]): readonly (readonly number[])[] {
    const customersOf = new Map(found.map(({ route, customers }) => [route, customers]));
    return this.schedule
      .chains(this.bestNext)
      .map((trips) => trips.flatMap((trip) => [0, ...(customersOf.get(trip) ?? [])]))
      .map((nodes) =>
        nodes.filter((node, at) => node !== 0 || (at > 0 && nodes[at + 1] !== undefined && nodes[at + 1] !== 0)),
      )
      .filter((nodes) => nodes.length > 0);
  }
}
