import { type SearchOptions, type SearchRun, search } from '../engine/index.ts';
import { PlainModel } from './plain.ts';
import type { RoutingProblem, RoutingSolution } from './types.ts';

export type RoutingOptions = Pick<SearchOptions, 'seed' | 'iterations' | 'seconds'>;

/** Solves a problem of like vehicles. See `Search`. */
export function solveRouting(problem: RoutingProblem, options: RoutingOptions, run: SearchRun = {}): RoutingSolution {
  const { routes, ...found } = search(new PlainModel(problem), options, run);
  return { ...found, routes: routes.map((each) => each.customers) };
}
