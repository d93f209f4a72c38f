import { unevenCost } from '../problem/index.ts';
import type { PlanFacts } from './insertions.ts';

/**
 * What days of unlike length cost more where some days of a plan have other lengths; 0 where the problem has no price for it.
 *
 * @param changed [slot]: new length of the paid day, 0 where nothing is left of it. ms
 * @returns nano-dollars, negative where days become more alike
 */
export function unevenAdded({ problem, routes }: PlanFacts, changed: ReadonlyMap<number, number>): number {
  if (problem.evenDays === undefined) return 0;
  const before = new Map([...routes].map(([slot, route]) => [slot, route.paidMs]));
  return (
    unevenCost(problem, [...new Map([...before, ...changed]).values()]) - unevenCost(problem, [...before.values()])
  );
}
