import type { Codes } from './values.ts';

/** A plan: one route per slot, what each costs, and the jobs that are in none. Never changed once made. */
export type State = {
  readonly routes: readonly Codes[];
  readonly costs: readonly number[];
  readonly absent: readonly number[];
  readonly cost: number;
};

/** A route in the place of another one, and what it costs. */
export type Change = { readonly codes: Codes; readonly cost: number };

/** Fewer jobs left out comes first, then cost. */
export function better(left: State, right: State): boolean {
  if (left.absent.length !== right.absent.length) return left.absent.length < right.absent.length;
  return left.cost < right.cost;
}

/** The state with some routes replaced and their costs given. */
export function withRoutes(state: State, changed: ReadonlyMap<number, Change>, absent: readonly number[]): State {
  const routes = state.routes.slice();
  const costs = state.costs.slice();
  for (const [slot, { codes, cost }] of changed) {
    routes[slot] = codes;
    costs[slot] = cost;
  }
  return { routes, costs, absent, cost: costs.reduce((sum, each) => sum + each, 0) };
}
