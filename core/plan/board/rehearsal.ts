import type { Plan } from '../result/index.ts';
import type { StopMove } from './types.ts';

/** Moves within a day, a few for each. */
const MOVES = 48;

/**
 * Moves to be tried and thrown away before somebody makes the first one: a program is slow at what it has not done yet. They go through
 * the days of the plan, each within itself: a move to another day may break its rules, and then takes longer than somebody should wait for.
 */
export function rehearsalOf({ days }: Plan): readonly StopMove[] {
  return Array.from({ length: MOVES }, (_, index) => index).flatMap((index): readonly StopMove[] => {
    const from = days[index % days.length];
    const stop = from?.stops[(7 * index) % from.stops.length];
    const [task] = stop?.tasks ?? [];
    if (task === undefined || from === undefined) return [];
    const { propertyId, zoneId, treatmentId, step } = task;
    const position = (5 * index) % from.stops.length;
    return [
      {
        task: { propertyId, zoneId, treatmentId, step },
        to: { kind: 'day', date: from.date, rigId: from.rigId, position },
      },
    ];
  });
}
