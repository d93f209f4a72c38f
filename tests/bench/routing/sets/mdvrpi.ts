import { ReloadModel, type ReloadProblem, Search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';
import { checkReplenishment, type ReplenishmentProblem, readReplenishment } from './mdvrpi-problem.ts';

/** Intermediate replenishment. */
export const SETS: readonly BenchSet[] = [
  {
    id: 'mdvrpi',
    prepare: (text) => {
      const problem = readReplenishment(text);
      return {
        solve: ({ clock, ...options }) => {
          const model = new ReloadModel(replenishment(problem));
          const engine = new Search(model, options, { clock });
          engine.run();
          const { routes: found, iterations } = engine.found();
          engine.adopt(found);
          const routes = found.map(({ route }) => model.stopsOf(route).map((stop) => (stop < 0 ? -1 - stop : stop)));
          return { routes, iterations, ...checkReplenishment(problem, routes) };
        },
      };
    },
  },
];

/** One kind of vehicle that reloads at the base or at any other depot. */
function replenishment(problem: ReplenishmentProblem): ReloadProblem {
  const { points, customers, vehicles } = problem;
  const places = points.length;
  const facilities = [0, ...points.keys()].filter((place, at) => at === 0 || place > customers);
  return {
    visits: customers,
    places,
    distances: Float64Array.from({ length: places * places }, (_, at) => {
      const [from, to] = [points[Math.floor(at / places)], points[at % places]];
      return from === undefined || to === undefined ? 0 : Math.hypot(from[0] - to[0], from[1] - to[1]);
    }),
    placeOf: Int32Array.from({ length: customers + 1 }, (_, visit) => visit),
    demand: Float64Array.from(problem.demand),
    service: Float64Array.from(problem.service),
    kinds: [
      {
        start: 0,
        end: 0,
        facilities: 0,
        capacity: problem.capacity,
        mostTime: problem.mostDuration,
        timePerDistance: 1,
        reloadTime: problem.docking,
        lastReload: false,
        costPerDistance: 1,
        openingCost: 0,
        day: 0,
      },
    ],
    kindOf: new Int32Array(vehicles),
    facilities: [facilities],
    allows: () => true,
  };
}
