import type { DayState } from './day-state.ts';
import { clockWords, msOf, TIME_SLACK_MS } from './tolerance.ts';
import { checkLeft } from './vessels.ts';

/** Asked when the last activity is over: is the rig home, and how long and dear was the day. */
export function checkDayEnd(state: DayState): void {
  const { ledger, rig, sums, label } = state;
  rig.compartments.forEach((_, compartment) => {
    checkLeft(state, compartment, label);
  });
  if (!state.ended) ledger.add('time-not-possible', label, 'the day has no evening work');
  const first = state.plan.activities[0];
  if (first !== undefined && Math.abs(msOf(first.startSec) - rig.shiftStartMs) > TIME_SLACK_MS) {
    const words = `starts at ${clockWords(msOf(first.startSec))}, the shift at ${clockWords(rig.shiftStartMs)}`;
    ledger.add('time-not-possible', label, words);
  }
  sums.paidMs = state.clockMs - rig.shiftStartMs;
  sums.overtimeMs = Math.max(0, sums.paidMs - rig.shiftMs);
  if (sums.paidMs > rig.shiftMs + rig.overtimeMs + TIME_SLACK_MS) {
    const over = sums.paidMs - rig.shiftMs - rig.overtimeMs;
    const limit = (rig.shiftStartMs + rig.shiftMs + rig.overtimeMs) / 1000;
    const excess = { subjectId: '', limit, found: state.clockMs / 1000, unit: 'clock' } as const;
    ledger.add('day-too-long', label, `${(over / 60_000).toFixed(1)} min beyond the shift and its overtime`, excess);
  }
  sums.cost +=
    rig.costPerDay +
    sums.paidMs * rig.costPerMs +
    sums.overtimeMs * rig.overtimeCostPerMs +
    sums.distanceM * rig.costPerM;
}
