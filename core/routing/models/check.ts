import { judgeFleetRoutes } from './check-fleet.ts';
import type { RoutingProblem } from './types.ts';

/** What a plan of routes costs in the file's own unit, and what is wrong with it. */
export type RoutesJudged = { readonly cost: number; readonly faults: readonly string[] };

/**
 * Reckons routes anew from the problem alone: each customer once, loads, lengths and windows kept, and the cost added up edge by
 * edge. Shares nothing with the search. A customer in no route is a fault.
 */
export function judgeRoutes(problem: RoutingProblem, routes: readonly (readonly number[])[]): RoutesJudged {
  const faults: string[] = [];
  if (routes.length > problem.vehicles) faults.push(`${routes.length} routes for ${problem.vehicles} vehicles`);
  let cost = 0;
  if (problem.fleet === undefined) {
    routes.forEach((route, at) => {
      cost += judgeRoute(problem, route, `route ${at + 1}`, faults);
    });
  } else cost = judgeFleetRoutes(problem, problem.fleet, routes, faults);
  judgeVisits(problem.customers, routes, problem.fleet?.reloads === true, faults);
  return { cost, faults };
}

function judgeVisits(
  customers: number,
  routes: readonly (readonly number[])[],
  reloads: boolean,
  faults: string[],
): void {
  const visits = new Map<number, number>();
  for (const customer of routes.flat()) visits.set(customer, (visits.get(customer) ?? 0) + 1);
  if (reloads) visits.delete(0);
  for (let customer = 1; customer <= customers; customer += 1) {
    const count = visits.get(customer) ?? 0;
    if (count !== 1) faults.push(`customer ${customer} is visited ${count} times`);
    visits.delete(customer);
  }
  for (const stranger of visits.keys()) faults.push(`there is no customer ${stranger}`);
}

function judgeRoute(problem: RoutingProblem, route: readonly number[], name: string, faults: string[]): number {
  const { windows, capacity, mostLength } = problem;
  const width = problem.customers + 1;
  let [cost, length, load, clock, from] = [0, 0, 0, windows?.open[0] ?? 0, 0];
  for (const node of [...route, 0]) {
    const edge = from * width + node;
    cost += problem.distances[edge] ?? Number.NaN;
    length += (problem.cost[edge] ?? 0) + (problem.service[node] ?? 0);
    load += problem.demand[node] ?? 0;
    clock = Math.max(clock + (problem.time[edge] ?? 0), windows?.open[node] ?? 0);
    if (windows !== null && clock > (windows.close[node] ?? 0)) faults.push(`${name} is late at ${node}`);
    clock += problem.service[node] ?? 0;
    from = node;
  }
  if (capacity > 0 && load > capacity) faults.push(`${name} carries ${load} of ${capacity}`);
  if (length > mostLength) faults.push(`${name} is ${length} long, ${mostLength} at most`);
  return cost;
}
