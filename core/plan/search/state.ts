import type { JobTable } from './jobs.ts';
import type { Codes, RouteValues } from './values.ts';

/** A plan under way: one route per slot, what each costs, and the jobs that are in none. Never changed once made. */
export type State = {
  readonly routes: readonly Codes[];
  readonly costs: readonly number[];
  readonly absent: readonly number[];
  readonly cost: number;
};

export function emptyState(table: JobTable): State {
  const slots = table.problem.slots.length;
  return {
    routes: Array.from({ length: slots }, () => []),
    costs: Array.from({ length: slots }, () => 0),
    absent: Array.from({ length: table.jobs }, (_, job) => job),
    cost: 0,
  };
}

/** Fewer jobs left out comes first, then cost. */
export function better(left: State, right: State): boolean {
  if (left.absent.length !== right.absent.length) return left.absent.length < right.absent.length;
  return left.cost < right.cost;
}

/** The state with some routes replaced and their costs given. */
export function withRoutes(
  state: State,
  changed: ReadonlyMap<number, { readonly codes: Codes; readonly cost: number }>,
  absent: readonly number[],
): State {
  const routes = state.routes.slice();
  const costs = state.costs.slice();
  for (const [slot, { codes, cost }] of changed) {
    routes[slot] = codes;
    costs[slot] = cost;
  }
  return { routes, costs, absent, cost: costs.reduce((sum, each) => sum + each, 0) };
}

/** The same plan at the cost of really driving it; null where some route cannot be driven after all. */
export function proved(state: State, values: RouteValues): State | null {
  const costs = state.routes.map((codes, slot) => values.prove(slot, codes));
  const cost = costs.reduce((sum, each) => sum + each, 0);
  return Number.isFinite(cost) ? { ...state, costs, cost } : null;
}
