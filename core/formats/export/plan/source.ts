import type { Book } from '../../../book/index.ts';
import type { Plan, PlanDay } from '../../../plan/result/index.ts';

/** What a file of a plan is made from. */
export type PlanSource = {
  readonly book: Book;
  readonly plan: Plan;
  /** The days that are written, each of one rig, in the order of the file. */
  readonly days: readonly PlanDay[];
};

/** What writing a file of a plan needs beside book and plan. */
export type PlanWriteOptions = {
  /** What the file is called where it has room for a name, usually that of the book and the round. */
  readonly title: string;
  /** When the file is made, in milliseconds after 1970 began, UTC. */
  readonly nowMs: number;
  /** The JSON text of a plan, handed in: a format knows only the types of plans. */
  readonly planText: (plan: Plan) => string;
};

/** Stands in every file of invented data that has room for it. */
export const INVENTED = 'Invented data, not for use.';
