import type { Op } from '../problem/index.ts';
import type { DaySums } from './day-state.ts';

/** What becomes of the ground of a day, ft2. */
export type GroundSums = Pick<DaySums, 'treatedSqFt' | 'coveredSqFt' | 'handTrimSqFt' | 'notReachedSqFt'>;

/**
 * The ground of one piece of work. Of what a machine covers and leaves over the whole of an op a piece has its share.
 * @param op null where the rig has none for it: then the ground counts as it is stated
 */
export function groundOf(op: Op | null, areaSqFt: number, handTrim: boolean): GroundSums {
  const share = op === null || op.ground === undefined ? null : areaSqFt / op.areaUnits;
  const left = share === null ? 0 : (op?.ground?.leftUnits ?? 0) * share;
  return {
    treatedSqFt: areaSqFt - left,
    coveredSqFt: share === null ? areaSqFt : (op?.ground?.coveredUnits ?? 0) * share,
    handTrimSqFt: handTrim ? areaSqFt : 0,
    notReachedSqFt: left,
  };
}

export function addGround(sums: DaySums, ground: GroundSums): void {
  sums.treatedSqFt += ground.treatedSqFt;
  sums.coveredSqFt += ground.coveredSqFt;
  sums.handTrimSqFt += ground.handTrimSqFt;
  sums.notReachedSqFt += ground.notReachedSqFt;
}
