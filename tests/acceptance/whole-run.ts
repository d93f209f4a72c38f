import type { Issue } from '../../core/base/index.ts';
import { type Book, readBook } from '../../core/book/index.ts';
import { checkBook } from '../../core/checks/index.ts';
import { measureBook, type PropertyMeasure } from '../../core/measure/index.ts';
import { judgePlan, type Verdict } from '../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';

/** A book taken all the way from its text to a plan that the judge has seen. */
export type WholeRun = {
  readonly book: Book;
  readonly checks: readonly Issue[];
  readonly measures: readonly PropertyMeasure[];
  readonly problem: Problem;
  readonly plan: Plan;
  readonly verdict: Verdict;
};

/** Reads, checks, measures, plans and judges. Throws where a step refuses; tests of refusals call the step themselves. */
export function wholeRun(text: string, iterations = 80): WholeRun {
  const read = readBook(text, 'round.json');
  if (!read.ok) throw new Error(`${read.error.code} ${read.error.where}: ${read.error.detail}`);
  const { book } = read.value;
  const checks = checkBook(book);
  const measures = measureBook(book);
  const byId = new Map(measures.map((each) => [each.propertyId, each]));
  const built = buildProblem(book, book.rounds[0]?.id ?? '', { measures: byId });
  if (!built.ok) throw new Error(`${built.error.code} ${built.error.where}: ${built.error.detail}`);
  const plan = explainPlan(book, built.value, solve(built.value, { seed: 1, iterations }));
  return { book, checks, measures, problem: built.value, plan, verdict: judgePlan(built.value, plan) };
}

/** "property zone treatment step" of everything that is in a day. */
export function placedTasks(plan: Plan): readonly string[] {
  return plan.days
    .flatMap((day) => day.stops)
    .flatMap((stop) => stop.tasks)
    .map((task) => `${task.propertyId} ${task.zoneId} ${task.treatmentId} ${task.step}`)
    .sort();
}

/** The same for everything that is in none. */
export function unplacedTasks(plan: Plan): readonly string[] {
  return plan.unplaced.map((task) => `${task.propertyId} ${task.zoneId} ${task.treatmentId} ${task.step}`).sort();
}
