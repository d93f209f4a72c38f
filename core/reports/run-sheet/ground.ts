import type { PlanDay } from '../../plan/result/index.ts';

/** Ground that a day goes onto, ft2: every zone once, with the largest of its tasks where several treatments share it. */
export function turfSqFt(day: PlanDay): number {
  const zones = new Map<string, number>();
  for (const stop of day.stops) {
    for (const task of stop.tasks) {
      const key = JSON.stringify([task.propertyId, task.zoneId]);
      zones.set(key, Math.max(zones.get(key) ?? 0, task.areaSqFt));
    }
  }
  return [...zones.values()].reduce((sum, each) => sum + each, 0);
}

/** Ground of all treatments of a day added up, ft2: a zone counts once for each of its tasks. */
export function treatedSqFt(day: PlanDay): number {
  return day.stops.flatMap((stop) => stop.tasks).reduce((sum, task) => sum + task.areaSqFt, 0);
}
