import { judgeRoutes, ROUTING_FORMATS, type RoutingProblem, solveRouting } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';

type How = { readonly format: string; readonly limited: boolean; readonly exact: boolean };

/** Like vehicles from one depot. `limited`: the best known value is for at most the stated number of vehicles. */
export const SETS: readonly BenchSet[] = [
  ...['cvrp-A', 'cvrp-B', 'cvrp-E', 'cvrp-F', 'cvrp-M', 'cvrp-P'].map((id) =>
    plainSet(id, { format: 'vrplib', limited: true, exact: false }),
  ),
  plainSet('cvrp-X', { format: 'vrplib', limited: false, exact: false }),
  plainSet('cvrp-CMT', { format: 'vrplib', limited: false, exact: true }),
  plainSet('vrptw-solomon', { format: 'solomon', limited: true, exact: false }),
  plainSet('hfvrp-X', { format: 'vrplib', limited: false, exact: false }),
  plainSet('sdvrptw', { format: 'vrplib', limited: false, exact: false }),
  plainSet('mtvrptwr', { format: 'vrplib', limited: false, exact: false }),
  plainSet('tsplib', { format: 'vrplib', limited: false, exact: false }),
];

function plainSet(id: string, { format, limited, exact }: How): BenchSet {
  return {
    id,
    prepare: (text, entry) => {
      const vehicles = limited && entry.vehicles != null ? { vehicles: entry.vehicles } : {};
      const read = ROUTING_FORMATS.find((each) => each.id === format)?.read(text, entry.file, { exact, ...vehicles });
      if (read?.ok !== true) throw new Error(read?.error.detail ?? format);
      const problem: RoutingProblem = read.value;
      return {
        solve: ({ clock, ...options }) => {
          const { routes, iterations } = solveRouting(problem, options, { clock });
          return { routes, iterations, ...judgeRoutes(problem, routes) };
        },
      };
    },
  };
}
