import type { Fleet, RoutingProblem } from './types.ts';

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
  readonly free: Int32Array;
  /** Kind that drives each route; of no meaning for an empty one. */
  readonly driver: Int32Array;
  /** Kind that `leastCost` found. */
  found = -1;

  constructor(problem: RoutingProblem, fleet: Fleet, routes: number) {
    const { kinds } = fleet;
    this.kinds = kinds.length;
    this.capacity = Int32Array.from(kinds, (each) => each.capacity);
    this.fixed = Float64Array.from(kinds, (each) => Math.round(each.fixed * problem.costPerUnit));
    this.perLength = Float64Array.from(kinds, (each) => Math.round(each.perLength * HUNDREDTHS));
    this.cheapest = Math.min(...this.perLength);
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
    this.found = -1;
    for (let kind = 0; kind < kinds; kind += 1) {
      if ((capacity[kind] as number) < load || ((mask >> kind) & 1) === 0) continue;
      if (kind !== own && (free[kind] as number) === 0) continue;
      const cost = (fixed[kind] as number) + (perLength[kind] as number) * length;
      if (cost < least || (cost === least && kind === own)) {
        least = cost;
        this.found = kind;
      }
    }
    return least;
  }
}
