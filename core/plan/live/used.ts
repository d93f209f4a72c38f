import type { Visit } from '../../book/index.ts';

/** Beyond this share of the planned amount a calibration is called for. Common practice, no source. */
const CALIBRATION_SHARE = 0.05;

/** What was used of one treatment's material, against the plan. */
export type UsedAgainstPlan = {
  readonly treatmentId: string;
  readonly unit: 'gal' | 'lb';
  /** Over the zones for which both were written down. */
  readonly used: number;
  readonly planned: number;
  readonly zones: number;
  /** Used over planned, less 1. */
  readonly excess: number;
  /** Beyond 5 %, either way. */
  readonly checkCalibration: boolean;
};

/** Sums up what was used on these visits, treatment by treatment; only zones for which both figures were written down count. */
export function usedAgainstPlan(visits: readonly Visit[]): readonly UsedAgainstPlan[] {
  const sums = new Map<
    string,
    { treatmentId: string; unit: 'gal' | 'lb'; used: number; planned: number; zones: number }
  >();
  const add = (
    treatmentId: string,
    unit: 'gal' | 'lb',
    used: number | undefined,
    planned: number | undefined,
  ): void => {
    if (used === undefined || planned === undefined || planned <= 0) return;
    const key = `${treatmentId} ${unit}`;
    const sum = sums.get(key) ?? { treatmentId, unit, used: 0, planned: 0, zones: 0 };
    sum.used += used;
    sum.planned += planned;
    sum.zones += 1;
    sums.set(key, sum);
  };
  for (const { outcome } of visits) {
    if (outcome.kind !== 'done') continue;
    for (const task of outcome.tasks) {
      add(task.treatmentId, 'gal', task.usedGal, task.expectedGal);
      add(task.treatmentId, 'lb', task.usedLb, task.expectedLb);
    }
  }
  return [...sums.values()].map((sum) => {
    const excess = sum.used / sum.planned - 1;
    return { ...sum, excess, checkCalibration: Math.abs(excess) > CALIBRATION_SHARE + DUST };
  });
}

const DUST = 1e-9;
