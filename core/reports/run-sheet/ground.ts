import type { PlanDay } from '../../plan/result/index.ts';

/** Ground that a day goes onto, ft2: every zone once, with the largest of its tasks where several treatments share it. */
export function turfSqFt(day: PlanDay): number {
  const works = new Map<string, number>();
  const zones = new Map<string, number>();
  for (const { propertyId, zoneId, treatmentId, step, areaSqFt } of day.stops.flatMap((stop) => stop.tasks)) {
    const zone = JSON.stringify([propertyId, zoneId]);
    const work = JSON.stringify([zone, treatmentId, step]);
    // What is trimmed by hand is ground beside the machine's.
    const sqFt = (works.get(work) ?? 0) + areaSqFt;
    works.set(work, sqFt);
    zones.set(zone, Math.max(zones.get(zone) ?? 0, sqFt));
  }
  return [...zones.values()].reduce((sum, each) => sum + each, 0);
}
