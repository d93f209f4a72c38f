import type { Tours } from '../engine/index.ts';
import type { Vehicles } from './vehicles.ts';

/** What is known of the routes that may give up their vehicles. */
type Driven = { readonly load: Int32Array; readonly length: Float64Array; readonly mask: Int32Array };

/**
 * Where all vehicles of a kind are on the road, one of them may still be had: a route that the step has not touched gives it up and
 * takes another that is free, or the one that the asking route gives up. For each pair of kinds the cheapest such route is kept, and
 * what the change adds to the cost.
 */
export class Releases {
  /** Least cost of having a vehicle of kind k for one of kind j, [k * kinds + j]. */
  private readonly cost: Float64Array;
  private readonly route: Int32Array;
  /** The same for any free vehicle, per kind, and the kind of that vehicle. */
  private readonly freeCost: Float64Array;
  private readonly freeKind: Int32Array;
  /** State of the fleet for which these hold. */
  private at = 0;
  private readonly vehicles: Vehicles;
  private readonly driven: Driven;
  private tours!: Tours;

  constructor(vehicles: Vehicles, driven: Driven) {
    const { kinds } = vehicles;
    this.vehicles = vehicles;
    this.driven = driven;
    this.cost = new Float64Array(kinds * kinds);
    this.route = new Int32Array(kinds * kinds);
    this.freeCost = new Float64Array(kinds);
    this.freeKind = new Int32Array(kinds);
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  /** What it costs to have a vehicle of a kind that has none free, for a route of kind `own` (-1 for none). */
  costOf(kind: number, own: number): number {
    const place = this.placeOf(kind, own);
    return place < 0 ? Number.POSITIVE_INFINITY : (this.cost[place] as number);
  }

  /** The route that gives up the vehicle, and the kind that it takes. */
  partner(kind: number, own: number): { readonly route: number; readonly takes: number } {
    const place = this.placeOf(kind, own);
    return { route: this.route[place] as number, takes: place % this.vehicles.kinds };
  }

  /** The cheapest pair of kinds by which it is had; -1 where there is none. */
  private placeOf(kind: number, own: number): number {
    if (this.at !== this.vehicles.version) this.refresh();
    const place = this.bestPlace(kind, own);
    // The step has come by the route that would change since these were looked up.
    if (place < 0 || !this.tours.isTouched(this.route[place] as number)) return place;
    this.vehicles.changed();
    this.refresh();
    return this.bestPlace(kind, own);
  }

  private bestPlace(kind: number, own: number): number {
    const { kinds } = this.vehicles;
    const least = this.freeCost[kind] as number;
    const swap = kind * kinds + own;
    if (own >= 0 && (this.cost[swap] as number) <= least && (this.cost[swap] as number) < Number.POSITIVE_INFINITY)
      return swap;
    return least === Number.POSITIVE_INFINITY ? -1 : kind * kinds + (this.freeKind[kind] as number);
  }

  private refresh(): void {
    const { tours, vehicles, cost, route: found } = this;
    const { kinds, driver, fixed, perLength, capacity, free } = vehicles;
    const { load, length, mask } = this.driven;
    this.at = vehicles.version;
    cost.fill(Number.POSITIVE_INFINITY);
    for (let place = 0; place < tours.used; place += 1) {
      const route = tours.inUse[place] as number;
      if (tours.isTouched(route)) continue;
      const kind = driver[route] as number;
      const long = length[route] as number;
      const now = (fixed[kind] as number) + (perLength[kind] as number) * long;
      for (let other = 0; other < kinds; other += 1) {
        if ((capacity[other] as number) < (load[route] as number)) continue;
        if ((((mask[route] as number) >> other) & 1) === 0) continue;
        const more = (fixed[other] as number) + (perLength[other] as number) * long - now;
        if (more >= (cost[kind * kinds + other] as number)) continue;
        cost[kind * kinds + other] = more;
        found[kind * kinds + other] = route;
      }
    }
    for (let kind = 0; kind < kinds; kind += 1) {
      let least = Number.POSITIVE_INFINITY;
      for (let other = 0; other < kinds; other += 1) {
        if ((free[other] as number) <= 0 || (cost[kind * kinds + other] as number) >= least) continue;
        least = cost[kind * kinds + other] as number;
        this.freeKind[kind] = other;
      }
      this.freeCost[kind] = least;
    }
  }
}
