import { type Problem, unevenCost } from '../problem/index.ts';
import type { Codes, RouteValues } from './values.ts';

/**
 * A plan: one route per slot, what each costs by itself, how long its paid day is (0 where it is empty), and the jobs that are in none.
 * `cost` is that of the routes and of days of unlike length. Never changed once made.
 */
export type State = {
  readonly routes: readonly Codes[];
  readonly costs: readonly number[];
  readonly lengths: readonly number[];
  readonly absent: readonly number[];
  readonly cost: number;
};

/** A route in the place of another one, what it costs, and how long its paid day is. */
export type Change = { readonly codes: Codes; readonly cost: number; readonly paidMs: number };

/** The better of two: fewest left out, then least cost. */
export function isBetter(one: Outcome, other: Outcome): boolean {
  if (one.absent.length !== other.absent.length) return one.absent.length < other.absent.length;
  return one.cost < other.cost;
}

type Outcome = { readonly absent: readonly unknown[]; readonly cost: number };

/** What routes cost together, with the price on days of unlike length. nano-dollars */
export function costOf(problem: Problem, costs: readonly number[], lengths: readonly number[]): number {
  return costs.reduce((sum, each) => sum + each, 0) + unevenCost(problem, lengths);
}

/** The state with every route reckoned anew, its length as the values then know it. */
export function reckonState(
  state: Omit<State, 'costs' | 'lengths' | 'cost'>,
  values: RouteValues,
  reckon: (slot: number, codes: Codes) => number,
): State {
  const costs: number[] = [];
  const lengths: number[] = [];
  state.routes.forEach((codes, slot) => {
    costs.push(codes.length === 0 ? 0 : reckon(slot, codes));
    lengths.push(codes.length === 0 ? 0 : values.paidMs);
  });
  return { ...state, costs, lengths, cost: costOf(values.table.problem, costs, lengths) };
}

/** The state with some routes replaced, their costs and lengths given. */
export function withRoutes(
  problem: Problem,
  state: State,
  changed: ReadonlyMap<number, Change>,
  absent: readonly number[],
): State {
  const routes = state.routes.slice();
  const costs = state.costs.slice();
  const lengths = state.lengths.slice();
  for (const [slot, { codes, cost, paidMs }] of changed) {
    routes[slot] = codes;
    costs[slot] = cost;
    lengths[slot] = paidMs;
  }
  return { routes, costs, lengths, absent, cost: costOf(problem, costs, lengths) };
}
