import type { Round } from '../../book/index.ts';
import type { ZoneDemand } from '../../demand/index.ts';

type Work = ZoneDemand['what'];

/**
 * What comes first on the same ground unless the round says otherwise. Aerating comes before everything, so that seed and granules fall
 * into the holes and nothing that lies on the ground is pulled up with the cores; seed before granules, so that a starter lies on it;
 * dry before wet, because granules stick to wet leaves and wheels carry fresh spray away. Common practice, no source.
 */
export const USUAL_WORK_ORDER: readonly Work[] = ['aerate', 'seed', 'spread', 'spray'];

/** The kinds of work of a round, first to last. */
export function workOrderOf(round: Round): readonly Work[] {
  return [...new Set([...(round.workOrder ?? []), ...USUAL_WORK_ORDER])];
}

/** Place of a step in the order of work. A starter comes after its seed, whatever the order says of granules. */
export function rankOf(order: readonly Work[], what: Work, isStarter: boolean): number {
  const place = (work: Work): number => 2 * order.indexOf(work);
  return isStarter ? Math.max(place(what), place('seed') + 1) : place(what);
}
