import type { Progress, StopSignal } from '../../base/index.ts';
import type { PropertyMeasure } from '../../measure/index.ts';
import type { PlannedDays } from '../../round/programme/index.ts';
import type { DriveTable } from '../../travel/index.ts';
import type { DoneWork, Outage } from './types.ts';
import type { UnderWay } from './under-way.ts';

/** What is asked for beside the book and its round. */
export type ProblemOptions = {
  /** Only these dates of the round. */
  readonly dates?: readonly string[];
  /** Measures made before; whatever is missing is measured here. */
  readonly measures?: ReadonlyMap<string, PropertyMeasure>;
  /** The day on which is asked, YYYY-MM-DD; absent: whether notice can still be given is not asked. */
  readonly today?: string;
  /** Days of other rounds' plans, for split applications: see `splitSpans`. */
  readonly plannedDays?: PlannedDays;
  /** Rigs in the middle of their day. Days that begin later are none of the problem's: say which dates. */
  readonly underWay?: readonly UnderWay[];
  /** Only these of the round's properties. */
  readonly propertyIds?: readonly string[];
  /** What was done before and is left out: see `doneWork`. */
  readonly done?: readonly DoneWork[];
  /** Price on days of unlike length, dollars for an hour above the mean; 0 unless told. See `EvenDays`. */
  readonly evenUsdPerHour?: number;
  /** Rigs and machines that are out on single dates; see `Outage`. */
  readonly outages?: readonly Outage[];
  /** Drive times by road; pairs that it does not know are an estimate, and so is everything where it is absent. */
  readonly roads?: DriveTable;
  /** Asked between two tasks: passes over thousands of lawns take a while. */
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};
