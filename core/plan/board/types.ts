import type { Violation } from '../judge/index.ts';
import type { Plan, PlanDay } from '../result/index.ts';

/** One task, by the names that a plan uses. Where a stop does several, any one of them stands for it. */
export type TaskName = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly step: number;
};

/** Where a stop goes. */
export type Goal =
  | {
      readonly kind: 'day';
      readonly date: string;
      readonly rigId: string;
      /** Place in the order of that day once the stop is out of it: 0 is first; beyond the end is last. */
      readonly position: number;
    }
  /** Into no day: it is left out, with that as its reason. */
  | { readonly kind: 'out' };

/** A stop, or work that was left out, that goes somewhere else. */
export type StopMove = { readonly task: TaskName; readonly to: Goal };

/** A rule that a plan breaks, in words with the stop, the limit and by how much. */
export type Breach = {
  readonly code: Violation['code'];
  /** '' where it belongs to no day. */
  readonly date: string;
  readonly rigId: string;
  /** '' where it belongs to no stop. */
  readonly propertyId: string;
  readonly words: string;
};

/** What a move changes in a plan; see `applyChange`. */
export type PlanChange = {
  /** Days written anew. */
  readonly days: readonly PlanDay[];
  /** Days that have no stop any more. */
  readonly emptied: readonly { readonly date: string; readonly rigId: string }[];
  /** The days of the plan in their order. */
  readonly order: readonly { readonly date: string; readonly rigId: string }[];
  readonly unplaced: Plan['unplaced'];
  readonly totals: Plan['totals'];
  readonly evenDays?: Plan['evenDays'];
};

/** A stop that cannot go where it was to go. */
export type Refusal = { readonly propertyId: string; readonly rigId: string; readonly words: string };

/** What became of a move: the changed plan with what it breaks, or why it was refused. */
export type MoveAnswer =
  | {
      readonly kind: 'moved';
      readonly change: PlanChange;
      /** Everything that the plan now breaks, whether this move or an earlier one has done it. */
      readonly breaches: readonly Breach[];
    }
  /** Nothing has changed. */
  | { readonly kind: 'refused'; readonly refusals: readonly Refusal[] };

/** A place for a stop in a plan, and what it takes. */
export type Place = {
  readonly date: string;
  readonly rigId: string;
  readonly position: number;
  readonly addedSec: number;
  readonly addedUsd: number;
  /** Whether every rule holds there. */
  readonly keepsRules: boolean;
  readonly words: string;
};

/** Work that would use up what is left in a tank at the end of a day. */
export type UseOfRest = {
  /** The date that it has in the plan now; '' where it is left out. */
  readonly plannedOn: string;
  readonly date: string;
  readonly rigId: string;
  readonly task: TaskName;
  readonly position: number;
  readonly words: string;
};
