import { createRandom } from '../../../core/base/index.ts';
import { ROUTING_FORMATS, type RoutingProblem } from '../../../core/routing/index.ts';
import { inventedInstance } from './instances.ts';

/** Depot at (0, 0), customers at (3, 4), (6, 8) and (0, 2). */
const HEAD = `DIMENSION: 4
EDGE_WEIGHT_TYPE: EUC_2D
NODE_COORD_SECTION
1 0 0
2 3 4
3 6 8
4 0 2
DEMAND_SECTION
1 0
2 2
3 4
4 3
`;

/** Two small vehicles and a large one that costs more. */
export const MIXED = `NAME: mixed
TYPE: HFVRP
VEHICLES: 3
${HEAD}CAPACITY_SECTION
1 5
2 9
3 5
VEHICLES_FIXED_COST_SECTION
1 1000
2 1250
3 1000
VEHICLES_UNIT_DISTANCE_COST_SECTION
1 100
2 200
3 100
EOF`;

/** The first vehicle may not go to customer 3, the second not to customer 1. */
export const RESTRICTED = `NAME: restricted
TYPE: SDVRPTW
VEHICLES: 2
VEHICLES_MAX_DURATION: 30
${HEAD}SERVICE_TIME_SECTION
1 0
2 2
3 3
4 4
TIME_WINDOW_SECTION
1 0 100
2 10 20
3 0 90
4 0 90
CAPACITY_SECTION
1 9
2 9
VEHICLES_ALLOWED_CLIENTS_SECTION
1 2 3
2 3 4
EOF`;

/** One load takes two customers; the goods of customers 2 and 3 come later. */
export const SEVERAL_LOADS = `NAME: several loads
TYPE: MTVRPTWR
VEHICLES: 2
CAPACITY: 6
SERVICE_TIME: 2
${HEAD}TIME_WINDOW_SECTION
1 0 60
2 0 60
3 0 60
4 0 30
RELEASE_TIME_SECTION
1 0
2 0
3 5
4 10
VEHICLES_RELOAD_DEPOT_SECTION
1 1
2 1
EOF`;

/** Three invented kinds of vehicles, few of each, of which the last may not go to every third customer. */
export function inventedFleet(seed: number, customers: number, windows: number): RoutingProblem {
  const random = createRandom(seed);
  const problem = inventedInstance(seed, { customers, capacity: 40, vehicles: customers, windows });
  const kinds = [20, 30, 40].map((capacity, kind) => ({
    vehicles: Array.from({ length: Math.ceil(customers / 8) }, (_, at) => 3 * at + kind),
    capacity,
    fixed: 50 + 10 * kind + random.below(20),
    perLength: 1 + 0.25 * kind,
  }));
  return {
    ...problem,
    costPerUnit: 100,
    vehicles: 3 * Math.ceil(customers / 8),
    fleet: {
      kinds,
      allowed: Int32Array.from({ length: customers + 1 }, (_, node) => (node % 3 === 0 ? 3 : 7)),
      release: undefined,
      mostDuration: windows > 0 ? 350 : Number.POSITIVE_INFINITY,
      reloads: false,
    },
  };
}

/** The problem that the text of an instance describes. */
export function readFleet(text: string): RoutingProblem {
  const result = ROUTING_FORMATS[0]?.read(text, 'fleet.vrp', {});
  if (result?.ok !== true) throw new Error('not read');
  return result.value;
}
