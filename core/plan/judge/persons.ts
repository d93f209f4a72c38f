import type { PlanActivity } from '../result/index.ts';

/**
 * Until when each of the two persons at a stop is busy. Treating is one person's; swapping a head and pouring the bags of a machine is
 * the first one's, who rides it; everything else takes both and begins when both are free.
 */
export type Persons = { readonly untilMs: [first: number, second: number] };

/** Whose work an activity is: 0 the first person's, 1 the second's, null both. */
export function whoseWork(activity: PlanActivity): 0 | 1 | null {
  if (activity.kind === 'treat') return activity.person === 2 ? 1 : 0;
  return activity.kind === 'swap-head' || activity.kind === 'pour' ? 0 : null;
}

/** When an activity has to start: when those who do it are free. ms */
export function dueStart(persons: Persons, who: 0 | 1 | null): number {
  return who === null ? Math.max(...persons.untilMs) : persons.untilMs[who];
}

/** Notes that an activity is over. */
export function busyUntil(persons: Persons, who: 0 | 1 | null, endMs: number): void {
  if (who === null) persons.untilMs.fill(Math.max(endMs, ...persons.untilMs));
  else persons.untilMs[who] = Math.max(persons.untilMs[who], endMs);
}
