import type { PlanDay, PlanStop, PlanTask } from './types.ts';

/** What becomes of the ground of some work, ft2. */
export type GroundSums = Pick<PlanDay, 'treatedSqFt' | 'coveredSqFt' | 'handTrimSqFt' | 'notReachedSqFt'>;

/** Ground of the work at some stops; a zone counts once for each time that it is gone over. */
export function groundOf(stops: readonly PlanStop[]): GroundSums {
  const tasks = stops.flatMap((stop) => stop.tasks);
  const sum = (of: (task: PlanTask) => number): number => tasks.reduce((total, task) => total + of(task), 0);
  return {
    treatedSqFt: sum((task) => task.areaSqFt - notReachedSqFt(task)),
    coveredSqFt: sum(({ areaSqFt, reckoned }) => (reckoned?.from === 'passes' ? reckoned.coveredSqFt : areaSqFt)),
    handTrimSqFt: sum((task) => (task.handTrim === true ? task.areaSqFt : 0)),
    notReachedSqFt: sum(notReachedSqFt),
  };
}

/** Ground of a task that a machine does not reach and nobody trims. ft2 */
export function notReachedSqFt({ reckoned }: PlanTask): number {
  return reckoned?.from === 'passes' ? reckoned.notReachedSqFt : 0;
}

/**
 * "12,000 ft² covered, 300 ft² by hand trim, 40 ft² not reached": what there is to say besides the ground treated; '' where that is
 * all.
 * @param area ft2 as people read it
 */
export function groundWords(ground: GroundSums, area: (sqFt: number) => string): string {
  const { treatedSqFt, coveredSqFt, handTrimSqFt } = ground;
  return [
    ...(Math.round(coveredSqFt) === Math.round(treatedSqFt) ? [] : [`${area(coveredSqFt)} covered`]),
    ...(handTrimSqFt > 0 ? [`${area(handTrimSqFt)} by hand trim`] : []),
    ...(ground.notReachedSqFt > 0 ? [`${area(ground.notReachedSqFt)} not reached`] : []),
  ].join(', ');
}
