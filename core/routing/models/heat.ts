import type { Tours } from '../engine/index.ts';

/** Temperatures that suit routes out of one depot, as shares of the mean edge; found on public instances. */
export const USUAL_HEAT = { start: 0.7, end: 0.003 } as const;

/** Mean cost of an edge of the routes as they stand: the scale of the temperatures. */
export function meanEdgeOf(tours: Tours, cost: number): number {
  return cost / Math.max(1, tours.placed + tours.used);
}
