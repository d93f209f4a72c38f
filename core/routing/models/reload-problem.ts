import type { VisitGroups } from '../engine/index.ts';

/**
 * What vehicles of one kind may do on one day. A vehicle leaves with a full load (or empty, where it collects), and may fill up (or
 * empty itself) at a facility in any gap between two stops.
 */
export type ReloadKind = {
  /** Places where the route starts and ends. */
  readonly start: number;
  readonly end: number;
  /** Index into `facilities` of the problem. */
  readonly facilities: number;
  readonly capacity: number;
  /** Most time of a route: driving, service and reloads. */
  readonly mostTime: number;
  readonly timePerDistance: number;
  /** Time of one reload. */
  readonly reloadTime: number;
  /** Whether a facility must be visited after the last stop, as where waste is collected. */
  readonly lastReload: boolean;
  readonly costPerDistance: number;
  /** Cost of using the route at all. */
  readonly openingCost: number;
  /** Day of the route, 0 to 30, for customers with several visits; 0 where there is but one. */
  readonly day: number;
};

/** Vehicles that reload on the way at one of several facilities, on one day or on several. */
export type ReloadProblem = {
  /** Nodes to visit, numbered from 1. */
  readonly visits: number;
  readonly places: number;
  /** Row-major [from * places + to]. */
  readonly distances: Float64Array;
  /** Per visit, entry 0 unused: its place, load and time of service. */
  readonly placeOf: Int32Array;
  readonly demand: Float64Array;
  readonly service: Float64Array;
  readonly kinds: readonly ReloadKind[];
  /** Kind of each route. */
  readonly kindOf: Int32Array;
  /** Sets of places where a kind may reload. */
  readonly facilities: readonly (readonly number[])[];
  /** Whether a visit may be done by a route of a kind. */
  readonly allows: (visit: number, kind: number) => boolean;
  /** Per kind: kinds that may do a route instead, as other vehicles on the same day; none where a route keeps its kind. */
  readonly instead?: readonly (readonly number[])[] | undefined;
  /** Customers with several visits on days of their own; the day of a route is that of its kind. */
  readonly groups?: Omit<VisitGroups, 'dayOf'> | undefined;
};

/**
 * Shortest way from each place to each over one facility of a set, in the layout of `distances`.
 * `stops` are the facilities taken.
 */
export function detours(
  { places, distances }: ReloadProblem,
  facilities: readonly number[],
): { readonly over: Float64Array; readonly stops: Int32Array } {
  const over = new Float64Array(places * places).fill(Number.POSITIVE_INFINITY);
  const stops = new Int32Array(places * places).fill(-1);
  for (const facility of facilities) {
    for (let from = 0; from < places; from += 1) {
      const reach = distances[from * places + facility] as number;
      for (let to = 0; to < places; to += 1) {
        const length = reach + (distances[facility * places + to] as number);
        if (length >= (over[from * places + to] as number)) continue;
        over[from * places + to] = length;
        stops[from * places + to] = facility;
      }
    }
  }
  return { over, stops };
}
