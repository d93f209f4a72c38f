import { notReachedSqFt, type PlanTask } from '../../../core/plan/result/index.ts';
import { underWayWords } from '../../texts/day/index.ts';

/** Ground of some work: each zone once; and what is treated, with as many times as it is gone over, less what is not reached. ft² */
export type Ground = { readonly zonesSqFt: number; readonly treatedSqFt: number };

/** Several treatments, or several steps of one, go over the same zone: its ground is the largest part that any of them takes. */
export function groundOf(tasks: readonly PlanTask[]): Ground {
  const works = new Map<string, number>();
  const zones = new Map<string, number>();
  let treatedSqFt = 0;
  for (const task of tasks) {
    const { propertyId, zoneId, treatmentId, step, areaSqFt } = task;
    const zone = JSON.stringify([propertyId, zoneId]);
    const work = JSON.stringify([zone, treatmentId, step]);
    // What is trimmed by hand is ground beside the machine's.
    const sqFt = (works.get(work) ?? 0) + areaSqFt;
    works.set(work, sqFt);
    zones.set(zone, Math.max(zones.get(zone) ?? 0, sqFt));
    treatedSqFt += areaSqFt - notReachedSqFt(task);
  }
  return { zonesSqFt: [...zones.values()].reduce((sum, each) => sum + each, 0), treatedSqFt };
}

/** "9,485 ft²", and "9,485 ft² · 18,970 ft² ground treated" where it is gone over more than once. */
export function groundWords(tasks: readonly PlanTask[], area: (sqFt: number) => string): string {
  const { zonesSqFt, treatedSqFt } = groundOf(tasks);
  const [zones, treated] = [area(zonesSqFt), area(treatedSqFt)];
  return zones === treated ? zones : underWayWords.ground.treated(zones, treated);
}
