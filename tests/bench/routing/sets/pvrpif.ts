import { ReloadModel, type ReloadProblem, Search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';
import {
  type CollectionProblem,
  type CollectionRoute,
  checkCollection,
  evenlySpaced,
  readCollection,
} from './pvrpif-problem.ts';
import { visitNodes } from './visits.ts';

/** Periodic with intermediate facilities. The routes of the answer have their day, less one, as the first entry. */
export const SETS: readonly BenchSet[] = [
  {
    id: 'pvrpif',
    prepare: (text) => {
      const problem = readCollection(text);
      return {
        solve: ({ clock, ...options }) => {
          const reloads = collection(problem);
          const model = new ReloadModel(reloads);
          const engine = new Search(model, options, { clock });
          engine.run();
          const { routes, iterations } = engine.found();
          engine.adopt(routes);
          const days = routes.map(({ route }): CollectionRoute => {
            const stops = model.stopsOf(route).map((stop) => (stop < 0 ? -1 - stop : (reloads.placeOf[stop] ?? -1)));
            return { day: reloads.kindOf[route] ?? -1, stops };
          });
          const listed = days.map(({ day, stops }) => [day, ...stops]);
          return { routes: listed, iterations, ...checkCollection(problem, days) };
        },
      };
    },
  },
];

/** The vehicles of each day are a kind of their own; a customer is a group of as many visits as it wants. */
function collection(problem: CollectionProblem): ReloadProblem {
  const { places, customers, days, vehicles } = problem;
  const nodes = visitNodes(
    problem.frequency.slice(0, customers + 1).map((frequency) => (frequency > 0 ? evenlySpaced(days, frequency) : [])),
  );
  const perVisit = (values: readonly number[]) =>
    Float64Array.from(nodes.customerOf, (customer) => (customer === 0 ? 0 : (values[customer] ?? 0)));
  return {
    visits: nodes.visits,
    places,
    distances: problem.travel,
    placeOf: nodes.customerOf,
    demand: perVisit(problem.demand),
    service: perVisit(problem.service),
    kinds: Array.from({ length: days }, (_, day) => ({
      start: 0,
      end: 0,
      facilities: 0,
      capacity: problem.capacity,
      mostTime: problem.mostDuration,
      timePerDistance: 1,
      reloadTime: 0,
      lastReload: true,
      costPerDistance: 1,
      openingCost: 0,
      day,
    })),
    kindOf: Int32Array.from({ length: days * vehicles }, (_, route) => Math.floor(route / vehicles)),
    facilities: [Array.from({ length: places - customers - 1 }, (_, at) => customers + 1 + at)],
    allows: () => true,
    groups: nodes,
  };
}
