import { expect } from 'vitest';
import { type Found, type FoundRoute, type RouteModel, Search, search } from '../../../../core/routing/engine/index.ts';
import { judgeRoutes, type RoutingProblem } from '../../../../core/routing/index.ts';

type VehicleModel = RouteModel & { byVehicle(routes: readonly FoundRoute[]): Parameters<typeof judgeRoutes>[1] };

/**
 * A search that begins where another one of the same problem ended has its cost and its vehicles, whether it is given the routes to
 * begin with or takes them over later.
 */
export function expectToBeginAgain<Model extends VehicleModel>(
  problem: RoutingProblem,
  model: () => Model,
): { readonly found: Found; readonly again: Found } {
  const first = model();
  const found = search(first, { seed: 1, iterations: 1000 });
  const second = model();
  const again = new Search(second, { seed: 2, start: found.routes }).found();
  const third = model();
  const other = new Search(third, { seed: 3 });
  other.adopt(found.routes);
  expect(found.absent).toEqual([]);
  expect(again.cost).toBe(found.cost);
  expect(other.found().cost).toBe(found.cost);
  expect(second.byVehicle(again.routes)).toEqual(first.byVehicle(found.routes));
  expect(judgeRoutes(problem, second.byVehicle(again.routes)).faults).toEqual([]);
  expect(judgeRoutes(problem, third.byVehicle(other.found().routes)).faults).toEqual([]);
  return { found, again };
}
