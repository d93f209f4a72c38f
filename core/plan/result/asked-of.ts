import type { DoneWork, Outage } from '../problem/index.ts';
import type { Plan } from './types.ts';

/** What the problem of a plan was asked with beside book, round and days: what stands in the plan, so that it can be built again. */
export type AskedOfPlan = {
  readonly evenUsdPerHour: number;
  readonly outages: readonly Outage[];
  readonly done: readonly DoneWork[];
};

export function askedOf({ evenDays, outages = [], done = [] }: Plan): AskedOfPlan {
  return { evenUsdPerHour: evenDays?.usdPerHour ?? 0, outages, done };
}
