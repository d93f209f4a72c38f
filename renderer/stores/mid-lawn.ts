import type { Plan, PlanActivity, PlanDay, PlanStop } from '../../core/plan/result/index.ts';

type Refill = Extract<PlanActivity, { kind: 'refill' }>;

/** A refill that falls into the middle of a lawn. */
export type MidLawnRefill = {
  readonly day: PlanDay;
  readonly stop: PlanStop;
  readonly refill: Refill;
  /** Whether it falls into the middle of a zone; else between two pieces of work on the lawn. */
  readonly isInZone: boolean;
};

/**
 * The refill of a plan that shows best what it is about: one in the middle of a zone, else one between two pieces of work at a stop;
 * null where every refill comes before the first work of its lawn.
 */
export function midLawnRefill({ days }: Plan): MidLawnRefill | null {
  const found = days.flatMap((day) =>
    day.activities.flatMap((each): readonly MidLawnRefill[] => {
      if (each.kind !== 'refill') return [];
      const stop = stopAround(day, each);
      return stop === undefined ? [] : [{ day, stop, refill: each, isInZone: each.afterSqFt > 0 }];
    }),
  );
  return found.find((each) => each.isInZone) ?? found[0] ?? null;
}

/** The stop at whose lawn a refill comes after work was begun and before it is all done. */
function stopAround(day: PlanDay, { propertyId, startSec }: Refill): PlanStop | undefined {
  return day.stops.find((stop) => {
    if (stop.propertyId !== propertyId) return false;
    const begun = stop.tasks.some((task) => task.startSec < startSec);
    const left = stop.tasks.some((task) => task.endSec > startSec);
    return begun && left;
  });
}
