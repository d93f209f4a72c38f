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
};

/** Routes as lists of customers, and the customers that are in none. */
export type RoutingSolution = {
  readonly routes: readonly (readonly number[])[];
  readonly absent: readonly number[];
  /** Integer cost, as the search reckoned it. */
  readonly cost: number;
  readonly iterations: number;
};
