import type { Plan } from '../result/index.ts';
import type { StopMove } from './types.ts';

/** Moves within a day, and from one day to the next, a few for each. */
const MOVES = 48;

/**
 * Moves to be tried and thrown away before somebody makes the first one: a program is slow at what it has not done yet. They go through
 * the days of the plan, and from each of them to the next one.
 */
export function rehearsalOf({ days }: Plan): readonly StopMove[] {
  return Array.from({ length: MOVES }, (_, index) => index).flatMap((index): readonly StopMove[] => {
    const from = days[index % days.length];
    const to = days[(index + (index % 2)) % days.length];
    const stop = from?.stops[(7 * index) % from.stops.length];
    const [task] = stop?.tasks ?? [];
    if (task === undefined || to === undefined) return [];
    const { propertyId, zoneId, treatmentId, step } = task;
    const position = (5 * index) % (to.stops.length + 1);
    return [
      {
        task: { propertyId, zoneId, treatmentId, step },
        to: { kind: 'day', date: to.date, rigId: to.rigId, position },
      },
    ];
  });
}
