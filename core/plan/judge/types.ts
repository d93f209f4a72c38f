/** Where in a plan a rule is broken. */
export type Spot = {
  readonly date: string;
  readonly rigId: string;
  /** Number of the activity in the day, from 0; -1 for the day as a whole. */
  readonly activity: number;
};

/** The limit that is broken, and what the plan comes to. */
export type Excess = {
  /** Compartment, fill point or product that the limit belongs to; '' for the rig, the customer or the day. */
  readonly subjectId: string;
  readonly limit: number;
  readonly found: number;
  /** `clock`: seconds after midnight. */
  readonly unit: 'clock' | 'gal' | 'lb' | 'bags' | 'none';
  /** Why the limit is there, where the problem says so. */
  readonly why?: string;
};

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
    | 'weather-closed'
    | 'fill-point-closed'
    | 'fill-point-lacks-material'
    | 'over-payload'
    | 'too-much-left'
    | 'aboard-differs'
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
  /** Absent where it belongs to no day. */
  readonly spot?: Spot;
  /** Absent where the rule is no limit. */
  readonly excess?: Excess;
};

/** Sums over a whole plan, added up by the judge: square feet, seconds, metres, dollars. */
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

/** What the judge says of a plan; it is feasible where nothing is violated. */
export type Verdict = {
  readonly feasible: boolean;
  readonly violations: readonly Violation[];
  readonly totals: JudgeTotals;
};
