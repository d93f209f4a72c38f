import { ReloadModel, type ReloadProblem, Search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';
import {
  checkPeriodicFleet,
  type PeriodicFleetProblem,
  type PeriodicFleetRoute,
  readPeriodicFleet,
} from './hsdmdmtpvrp-problem.ts';
import { visitNodes } from './visits.ts';

/**
 * Heterogeneous, site-dependent, with several depots, trips and days. The routes of the answer begin with day, type and depot, less one
 * each; 0 stands between two trips.
 */
export const SETS: readonly BenchSet[] = [
  {
    id: 'hsdmdmtpvrp',
    prepare: (text) => {
      const problem = readPeriodicFleet(text);
      return {
        solve: ({ clock, ...options }) => {
          const { reloads, uses } = periodicFleet(problem);
          const model = new ReloadModel(reloads);
          const engine = new Search(model, options, { clock });
          engine.run();
          const { routes, iterations } = engine.found();
          engine.adopt(routes);
          const days = routes.map(({ route }): PeriodicFleetRoute => {
            const trips: number[][] = [[]];
            for (const stop of model.stopsOf(route)) {
              if (stop < 0) trips.push([]);
              else trips.at(-1)?.push(reloads.placeOf[stop] ?? -1);
            }
            return { ...(uses[reloads.kindOf[route] ?? -1] as Use), trips };
          });
          const listed = days.map(({ day, type, depot, trips }) => [
            ...[day, type, depot],
            ...trips.flatMap((trip, at) => (at === 0 ? trip : [0, ...trip])),
          ]);
          return { routes: listed, iterations, ...checkPeriodicFleet(problem, days) };
        },
      };
    },
  },
];

type Use = Pick<PeriodicFleetRoute, 'day' | 'type' | 'depot'>;

/**
 * A kind of route for each day, depot and type of vehicle. The vehicles of a type are shared out evenly among the depots beforehand, so
 * that each keeps its depot on all days.
 */
function periodicFleet(problem: PeriodicFleetProblem): {
  readonly reloads: ReloadProblem;
  /** Per kind. */
  readonly uses: readonly Use[];
} {
  const { points, customers, depots, days, types } = problem;
  const places = points.length;
  const nodes = visitNodes(problem.patterns.slice(0, customers + 1));
  const uses = Array.from({ length: days * depots * types.length }, (_, at): Use => {
    const type = at % types.length;
    const depot = Math.floor(at / types.length) % depots;
    return { day: Math.floor(at / types.length / depots), type, depot };
  });
  const perVisit = (values: readonly number[]) =>
    Float64Array.from(nodes.customerOf, (customer) => (customer === 0 ? 0 : (values[customer] ?? 0)));
  const kindOf = uses.flatMap(({ type, depot }, kind) => {
    const count = types[type]?.count ?? 0;
    const share = Math.floor(count / depots) + (depot < count % depots ? 1 : 0);
    return new Array<number>(share).fill(kind);
  });
  const reloads: ReloadProblem = {
    visits: nodes.visits,
    places,
    distances: Float64Array.from({ length: places * places }, (_, at) => {
      const [from, to] = [points[Math.floor(at / places)], points[at % places]];
      return from === undefined || to === undefined ? 0 : Math.hypot(from[0] - to[0], from[1] - to[1]);
    }),
    placeOf: nodes.customerOf,
    demand: perVisit(problem.demand),
    service: perVisit(problem.loading),
    kinds: uses.map(({ day, type, depot }) => {
      const { capacity, speed, fixedCost, costPerDistance } = types[type] as (typeof types)[number];
      const home = customers + 1 + depot;
      return {
        start: home,
        end: home,
        facilities: depot,
        capacity,
        mostTime: problem.mostDuration,
        timePerDistance: 1 / speed,
        reloadTime: 0,
        lastReload: false,
        costPerDistance,
        openingCost: fixedCost,
        day,
      };
    }),
    kindOf: Int32Array.from(kindOf),
    facilities: Array.from({ length: depots }, (_, depot) => [customers + 1 + depot]),
    allows: (visit, kind) => {
      const type = uses[kind]?.type ?? 0;
      return (((problem.allowedTypes[nodes.customerOf[visit] ?? 0] ?? 0) >> type) & 1) === 1;
    },
    instead: uses.map(({ day }, kind) =>
      [...uses.keys()].filter((other) => other !== kind && uses[other]?.day === day),
    ),
    groups: nodes,
  };
  return { reloads, uses };
}
