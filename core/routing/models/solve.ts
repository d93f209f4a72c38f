import { type SearchOptions, type SearchRun, search } from '../engine/index.ts';
import { PlainModel } from './plain.ts';
import { relabelled } from './relabel.ts';
import type { RoutingProblem, RoutingSolution } from './types.ts';

export type RoutingOptions = Pick<SearchOptions, 'seed' | 'iterations' | 'seconds'>;

/** Solves a problem of like vehicles. See `Search`. */
export function solveRouting(problem: RoutingProblem, options: RoutingOptions, run: SearchRun = {}): RoutingSolution {
  const { problem: moved, names } = relabelled(problem);
  const found = search(new PlainModel(moved), options, run);
  const named = (customers: readonly number[]) => customers.map((customer) => names[customer] as number);
  return {
    routes: found.routes.map((each) => named(each.customers)),
    absent: named(found.absent),
    cost: found.cost,
    iterations: found.iterations,
  };
}
