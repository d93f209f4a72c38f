import type { Plan, PlanDay } from '../result/index.ts';
import type { PlanChange } from './types.ts';

/** What has to be told of a changed plan to somebody who has the plan before the change. */
export function changeBetween(before: Plan, after: Plan): PlanChange {
  const known = new Set(before.days);
  const there = new Set(after.days.map(dayKey));
  return {
    days: after.days.filter((day) => !known.has(day)),
    emptied: before.days.filter((day) => !there.has(dayKey(day))).map(({ date, rigId }) => ({ date, rigId })),
    order: after.days.map(({ date, rigId }) => ({ date, rigId })),
    unplaced: after.unplaced,
    totals: after.totals,
    ...(after.evenDays === undefined ? {} : { evenDays: after.evenDays }),
  };
}

/** The plan after a change; days that did not change are the same objects. */
export function applyChange(plan: Plan, { days, order, unplaced, totals, evenDays }: PlanChange): Plan {
  const found = new Map([...plan.days, ...days].map((day) => [dayKey(day), day]));
  return {
    ...plan,
    days: order.flatMap((each) => found.get(dayKey(each)) ?? []),
    unplaced,
    totals,
    ...(evenDays === undefined ? {} : { evenDays }),
  };
}

function dayKey({ date, rigId }: Pick<PlanDay, 'date' | 'rigId'>): string {
  return JSON.stringify([date, rigId]);
}
