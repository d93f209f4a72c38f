import type { Releases } from './releases.ts';
import type { Fleet, RoutingProblem } from './types.ts';

/** All kinds, as a bit mask. */
export const EVERY_KIND = -1;
/** Costs per length are whole numbers of hundredths. */
const HUNDREDTHS = 100;

/** The kinds of vehicles of a fleet, how many of each stay free, and which kind drives each route. */
export class Vehicles {
  readonly kinds: number;
  readonly capacity: Int32Array;
  /** Cost of using one, and per unit of length, in the whole numbers of the search. */
  readonly fixed: Float64Array;
  readonly perLength: Float64Array;
  readonly cheapest: number;
  readonly mostCapacity: number;
  /** Whether all cost the same. */
  readonly alike: boolean;
  readonly free: Int32Array;
  /** Kind that drives each route; of no meaning for an empty one. */
  readonly driver: Int32Array;
  /** Kind that `leastCost` found, and the least cost per length of those that it could choose from. */
  found = -1;
  leastUnit = 0;
  /** Kinds that are given to routes for the time being, as a bit mask. */
  private offered = EVERY_KIND;
  /** What it costs to have a vehicle of a kind that has none free; null where none runs out. */
  releases: Releases | null = null;
  /** Changes when a kind runs out, or is to be had again. */
  version = 1;

  constructor(problem: RoutingProblem, fleet: Fleet, routes: number) {
    const { kinds } = fleet;
    this.kinds = kinds.length;
    this.capacity = Int32Array.from(kinds, (each) => each.capacity);
    this.fixed = Float64Array.from(kinds, (each) => Math.round(each.fixed * problem.costPerUnit));
    this.perLength = Float64Array.from(kinds, (each) => Math.round(each.perLength * HUNDREDTHS));
    this.cheapest = Math.min(...this.perLength);
    this.alike = this.perLength.every((each, kind) => each === this.cheapest && this.fixed[kind] === this.fixed[0]);
    this.mostCapacity = Math.max(...this.capacity);
    this.free = Int32Array.from(kinds, (each) => each.vehicles.length);
    this.driver = new Int32Array(routes);
  }

  costOf(kind: number, length: number): number {
    return (this.fixed[kind] as number) + (this.perLength[kind] as number) * length;
  }

  /**
   * Least cost of a route by a kind of the mask that has a vehicle free, or by its own kind (-1 for none). Infinite where there is
   * none. Sets `found`.
   */
  leastCost(own: number, mask: number, load: number, length: number): number {
    const { kinds, capacity, free, fixed, perLength } = this;
    let least = Number.POSITIVE_INFINITY;
    let unit = Number.POSITIVE_INFINITY;
    this.found = -1;
    for (let kind = 0; kind < kinds; kind += 1) {
      if ((capacity[kind] as number) < load || ((mask >> kind) & 1) === 0) continue;
      if (kind !== own && ((this.offered >> kind) & 1) === 0) continue;
      let cost = 0;
      if (kind !== own && (free[kind] as number) <= 0) {
        if (this.releases === null) continue;
        cost = this.releases.costOf(kind, own);
        if (cost === Number.POSITIVE_INFINITY) continue;
      }
      const each = perLength[kind] as number;
      if (each < unit) unit = each;
      cost += (fixed[kind] as number) + each * length;
      if (cost < least || (cost === least && kind === own)) {
        least = cost;
        this.found = kind;
      }
    }
    this.leastUnit = unit;
    return least;
  }

  /** Only these kinds are given to routes from now on; those that have another keep it. */
  offer(kinds: number): void {
    if (this.offered === kinds) return;
    this.offered = kinds;
    this.version += 1;
  }

  /** Routes that may give up their vehicles are others now. */
  changed(): void {
    this.version += 1;
  }

  take(kind: number): void {
    this.free[kind] = (this.free[kind] as number) - 1;
    if (this.free[kind] === 0) this.version += 1;
  }

  giveBack(kind: number): void {
    this.free[kind] = (this.free[kind] as number) + 1;
    if (this.free[kind] === 1) this.version += 1;
  }
}
