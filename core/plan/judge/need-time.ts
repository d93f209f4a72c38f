import type { PlanActivity } from '../result/index.ts';
import type { DayState } from './day-state.ts';
import { msOf, TIME_SLACK_MS } from './tolerance.ts';

/** Reports an activity that takes less time than it must. */
export function needTime(state: DayState, activity: PlanActivity, leastMs: number, where: string): void {
  const spent = msOf(activity.endSec) - msOf(activity.startSec);
  if (spent < leastMs - TIME_SLACK_MS) {
    const words = `takes ${(spent / 1000).toFixed(1)} s, needs at least ${(leastMs / 1000).toFixed(1)} s`;
    state.ledger.add('time-not-possible', where, words);
  }
}
