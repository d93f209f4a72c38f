/**
 * A routing problem in whole numbers: customers 1 to n, depot 0. Costs, times and demands are integers in whatever unit the reader of
 * the file chose; `costPerUnit` turns a cost back into the file's own unit.
 */
export type RoutingProblem = {
  readonly name: string;
  readonly customers: number;
  /** Row-major [from * (n + 1) + to]. */
  readonly cost: Int32Array;
  /** Travel times in the same layout; the same array as `cost` where the file makes no difference. */
  readonly time: Int32Array;
  /** Distances in the file's own unit, in the same layout. */
  readonly distances: Float64Array;
  /** Per node; 0 for the depot. */
  readonly demand: Int32Array;
  readonly service: Int32Array;
  /** Service may start between these times; null where the problem knows none. */
  readonly windows: { readonly open: Int32Array; readonly close: Int32Array } | null;
  /** Most demand of one route; 0 where nothing is carried. */
  readonly capacity: number;
  /** Most cost of one route, service included; infinite where there is no limit. */
  readonly mostLength: number;
  /** Routes that may be used. */
  readonly vehicles: number;
  /** Integer cost of one unit of the file's cost. */
  readonly costPerUnit: number;
  /** Present where vehicles are more than their number and one capacity; `capacity` is then that of the largest. */
  readonly fleet?: Fleet;
};

/**
 * Routes as lists of customers, 0 for a stop at the depot between two loads, and the customers that are in none. Where a fleet has
 * vehicles that differ there is one list for every vehicle in the order of the file, empty where it stays at home.
 */
export type RoutingSolution = {
  readonly routes: readonly (readonly number[])[];
  readonly absent: readonly number[];
  /** Integer cost, as the search reckoned it. */
  readonly cost: number;
  readonly iterations: number;
};

/**
 * Vehicles that are alike. A route costs `fixed + perLength * length`, all in the file's own unit: hundredths at the finest, so that
 * they are whole numbers of `costPerUnit`.
 */
export type VehicleKind = {
  /** Their numbers in the order of the file, from 0 on. */
  readonly vehicles: readonly number[];
  readonly capacity: number;
  readonly fixed: number;
  readonly perLength: number;
};

/** What a problem has where its vehicles differ, come back for more, or have a longest working day. */
export type Fleet = {
  readonly kinds: readonly VehicleKind[];
  /** Per node: bit k is set where vehicles of kind k may go. */
  readonly allowed: Int32Array;
  /** Per node: a vehicle that carries its goods leaves the depot no earlier. Absent: everything is there from the start. */
  readonly release: Int32Array | undefined;
  /** Most time from leaving the depot to the last return; infinite where there is no limit. */
  readonly mostDuration: number;
  /** Whether a vehicle may come back to the depot for another load. */
  readonly reloads: boolean;
};
