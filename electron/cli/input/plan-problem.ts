import { err, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { measureBook } from '../../../core/measure/index.ts';
import { buildProblem, type Problem } from '../../../core/plan/problem/index.ts';
import { type Plan, readPlan } from '../../../core/plan/result/index.ts';
import { describePlace, readText } from '../../services/files/index.ts';

/** Reads a plan; errors name the file. */
export async function readPlanFile(file: string): Promise<Result<Plan>> {
  const text = await readText(file);
  return text.ok ? readPlan(text.value, describePlace(file)) : text;
}

/**
 * The problem that a plan was made for: the whole round, or the days of it that were asked for then, with the price on
 * days of unlike length and without the rigs and machines that the plan names. Where none has the
 * plan's fingerprint, the whole round.
 *
 * @param where the book's file, for errors: those of `buildProblem`, and 'reference-missing' where the round is not there
 */
export function problemOfPlan(book: Book, plan: Plan, where: string): Result<Problem> {
  const round = book.rounds.find((each) => each.id === plan.roundId);
  if (round === undefined) {
    const detail = `The book has no round "${plan.roundId}", for which the plan was made.`;
    return err('reference-missing', `${where}, rounds`, detail, 'Use the book that the plan was made from.');
  }
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const asked = { measures, evenUsdPerHour: plan.evenDays?.usdPerHour ?? 0, outages: plan.outages ?? [] };
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
