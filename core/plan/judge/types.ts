/** One rule that a plan breaks. */
export type Violation = {
  readonly code:
    | 'level-below-empty'
    | 'level-above-capacity'
    | 'stock-below-empty'
    | 'stock-above-capacity'
    | 'mixed-materials'
    | 'out-of-reach'
    | 'day-too-long'
    | 'window-missed'
    | 'fill-point-closed'
    | 'fill-point-lacks-material'
    | 'over-payload'
    | 'too-much-left'
    | 'ground-not-covered'
    | 'ground-covered-twice'
    | 'task-unknown'
    | 'task-missing'
    | 'rig-unknown'
    | 'day-not-allowed'
    | 'out-of-order'
    | 'time-not-possible'
    | 'figure-differs'
    | 'plan-stale';
  /** Day and rig, stop, zone. */
  readonly where: string;
  readonly message: string;
};

export type JudgeTotals = {
  readonly days: number;
  readonly stops: number;
  readonly treatedSqFt: number;
  readonly coveredSqFt: number;
  readonly handTrimSqFt: number;
  readonly notReachedSqFt: number;
  readonly paidSec: number;
  readonly overtimeSec: number;
  readonly driveSec: number;
  readonly distanceM: number;
  readonly refills: number;
  readonly costUsd: number;
  readonly unplaced: number;
};

export type Verdict = {
  readonly feasible: boolean;
  readonly violations: readonly Violation[];
  readonly totals: JudgeTotals;
};
