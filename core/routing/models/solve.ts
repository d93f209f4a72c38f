import { createRandom } from '../../base/index.ts';
import { type Found, type SearchOptions, type SearchRun, search } from '../engine/index.ts';
import { FleetModel } from './fleet.ts';
import { PlainModel } from './plain.ts';
import { relabelled } from './relabel.ts';
import { TripsModel } from './trips.ts';
import type { Fleet, RoutingProblem, RoutingSolution } from './types.ts';

/** The seed, and how long the search goes on: iterations, seconds or both. */
export type RoutingOptions = Pick<SearchOptions, 'seed' | 'iterations' | 'seconds'>;

/** Solves a problem from one depot. See `Search`. */
export function solveRouting(problem: RoutingProblem, options: RoutingOptions, run: SearchRun = {}): RoutingSolution {
  const { problem: moved, names } = relabelled(problem);
  const { routes, absent, cost, iterations } =
    moved.fleet === undefined ? searchPlain(moved, options, run) : searchFleet(moved, moved.fleet, options, run);
  const named = (customers: readonly number[]) => customers.map((customer) => names[customer] as number);
  return { routes: routes.map(named), absent: named(absent), cost, iterations };
}

type Searched = Omit<Found, 'routes'> & { readonly routes: readonly (readonly number[])[] };

function searchPlain(problem: RoutingProblem, options: RoutingOptions, run: SearchRun): Searched {
  const found = search(new PlainModel(problem), options, run);
  return { ...found, routes: found.routes.map((each) => each.customers) };
}

function searchFleet(problem: RoutingProblem, fleet: Fleet, options: RoutingOptions, run: SearchRun): Searched {
  const random = createRandom(options.seed);
  const model = fleet.reloads ? new TripsModel(problem, fleet, random) : new FleetModel(problem, fleet, random);
  const found = search(model, options, run);
  return { ...found, routes: model.byVehicle(found.routes) };
}
