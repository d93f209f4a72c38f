import { err, type Issue, issue, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { measureBook } from '../../../core/measure/index.ts';
import { buildProblem, type Problem, type ProblemOptions } from '../../../core/plan/problem/index.ts';
import { askedOf, type Plan, type PlanDay, readPlan } from '../../../core/plan/result/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';
import { describePlace, readText } from '../../services/files/index.ts';
import type { Typed } from '../command.ts';

/** A book with its drive times, and its file. */
type PlannedBook = { readonly book: Book; readonly where: string; readonly roads?: DriveTable };

/** Reads a plan; errors name the file. */
export async function readPlanFile(file: string): Promise<Result<Plan>> {
  const text = await readText(file);
  return text.ok ? readPlan(text.value, describePlace(file)) : text;
}

/**
 * The problem that a plan was made for: the whole round, or the days of it that were asked for then, with the price on
 * days of unlike length and without the rigs, machines and work that the plan names. Where none has the
 * plan's fingerprint, the whole round.
 *
 * Errors, with the book's file: those of `buildProblem`, and 'reference-missing' where the round is not there
 */
export function problemOfPlan({ book, where, roads }: PlannedBook, plan: Plan): Result<Problem> {
  const round = book.rounds.find((each) => each.id === plan.roundId);
  if (round === undefined) {
    const detail = `The book has no round "${plan.roundId}", for which the plan was made.`;
    return err('reference-missing', `${where}, rounds`, detail, 'Use the book that the plan was made from.');
  }
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const asked: ProblemOptions = { measures, ...askedOf(plan), ...(roads === undefined ? {} : { roads }) };
  const whole = buildProblem(book, round.id, asked);
  if (!whole.ok) return { ok: false, error: { ...whole.error, where: `${where}, ${whole.error.where}` } };
  if (whole.value.hash === plan.problemHash) return whole;
  const planned = [...new Set(plan.days.map((each) => each.date))];
  for (const dates of [planned, ...round.dates.map((date) => [date])]) {
    const part = buildProblem(book, round.id, { ...asked, dates });
    if (part.ok && part.value.hash === plan.problemHash) return part;
  }
  return whole;
}

/** A warning where the book is no longer as it was when the plan was made. */
export function staleIssues(planned: PlannedBook, plan: Plan): readonly Issue[] {
  const problem = problemOfPlan(planned, plan);
  if (problem.ok && problem.value.hash === plan.problemHash) return [];
  const words = 'The book was changed after this plan was made. Plan again before using what is made from it.';
  return [issue('warning', 'plan-stale', planned.where, words)];
}

/**
 * The days of a plan that --date and --rig leave. Error: 'reference-missing' where there are none.
 * @param file of the plan, for the error
 */
export function daysOfPlan(plan: Plan, { options }: Typed, file: string): Result<readonly PlanDay[]> {
  const days = plan.days.filter(
    (day) =>
      (options.date === undefined || day.date === options.date) &&
      (options.rig === undefined || day.rigId === options.rig),
  );
  return days.length > 0 ? ok(days) : noSuchDay(plan, file);
}

function noSuchDay(plan: Plan, file: string): Result<never> {
  const known = plan.days.map((each) => `${each.date} ${each.rigId}`).join(', ');
  const detail = known === '' ? 'The plan has no day: nothing could be placed.' : 'The plan has no such day.';
  const hint = known === '' ? 'Its list of what was not placed says why.' : `It has these: ${known}.`;
  return err('reference-missing', `${describePlace(file)}, days`, detail, hint);
}
