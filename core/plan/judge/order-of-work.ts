import type { Task } from '../problem/index.ts';
import type { DayState } from './day-state.ts';
import { clockWords, TIME_SLACK_MS } from './tolerance.ts';

/** A treat of a visit: its task, and when it was done. */
export type WorkedSpan = { readonly task: Task; readonly startMs: number; readonly endMs: number };

/** On one zone, work of a lower rank has to be over before work of a higher one begins. Asked when a visit is packed up. */
export function checkOrderOfWork(state: DayState, where: string): void {
  for (const early of state.worked) {
    const late = state.worked.find(
      ({ task, startMs }) =>
        task.zoneId === early.task.zoneId && task.rank > early.task.rank && startMs < early.endMs - TIME_SLACK_MS,
    );
    if (late === undefined) continue;
    const words = `"${late.task.treatmentId}" begins at ${clockWords(late.startMs)}, before "${early.task.treatmentId}" is over at ${clockWords(early.endMs)}`;
    state.ledger.add('out-of-order', `${where}, ${early.task.propertyId} ${early.task.zoneId}`, words);
  }
  state.worked.length = 0;
}
