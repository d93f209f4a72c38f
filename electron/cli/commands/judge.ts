import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { measureBook } from '../../../core/measure/index.ts';
import { judgePlan, type Verdict } from '../../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../../core/plan/problem/index.ts';
import { type Plan, readPlan } from '../../../core/plan/result/index.ts';
import { formatDistance, formatDuration, formatLargeArea, formatMoney } from '../../../core/units/index.ts';
import { describePlace, readText } from '../../services/files/index.ts';
import type { Answer, Command } from '../command.ts';
import { readBookFile } from '../input/index.ts';
import type { JudgeOutput } from '../output/index.ts';
import { counted, issueLines, tableLines } from '../text/index.ts';

export const judgeCommand: Command = {
  name: 'judge',
  summary: 'Checks any plan against its book with code that shares nothing with the search.',
  details: [
    'Every activity is run again: times, levels, stocks, weights, windows, reach, ground. The exit code is 0 whatever the verdict; `feasible` tells it. A plan for another state of the book has the violation plan-stale.',
  ],
  operands: [
    { name: 'BOOK', words: 'book file or its JSON form' },
    { name: 'PLAN', words: 'plan in its JSON form, as written by plan --out' },
  ],
  options: [],
  schema: 'judge',
  example: 'npx swardway judge sample-routes/residential-day.json plan.json',
  run: async ({ operands }) => {
    const book = await readBookFile(operands.BOOK ?? '');
    if (!book.ok) return book;
    const plan = await readPlanFile(operands.PLAN ?? '');
    if (!plan.ok) return plan;
    const problem = problemOfPlan(book.value.book, plan.value);
    if (!problem.ok)
      return { ok: false, error: { ...problem.error, where: `${book.value.where}, ${problem.error.where}` } };
    return ok(answerOf(plan.value, judgePlan(problem.value, plan.value), issueLines(book.value.issues)));
  },
};

/** Reads a plan; errors name the file. */
export async function readPlanFile(file: string): Promise<Result<Plan>> {
  const text = await readText(file);
  return text.ok ? readPlan(text.value, describePlace(file)) : text;
}

/**
 * The problem that a plan was made for: the whole round, or the days of it that were asked for then. Where none has the
 * plan's fingerprint, the whole round.
 */
function problemOfPlan(book: Book, plan: Plan): Result<Problem> {
  const round = book.rounds.find((each) => each.id === plan.roundId);
  if (round === undefined) {
    const hint = 'Judge it with the book that it was made from.';
    return err(
      'reference-missing',
      'rounds',
      `The book has no round "${plan.roundId}", for which the plan was made.`,
      hint,
    );
  }
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const whole = buildProblem(book, round.id, { measures });
  if (whole.ok && whole.value.hash === plan.problemHash) return whole;
  const planned = [...new Set(plan.days.map((each) => each.date))];
  for (const dates of [planned, ...round.dates.map((date) => [date])]) {
    const part = buildProblem(book, round.id, { dates, measures });
    if (part.ok && part.value.hash === plan.problemHash) return part;
  }
  return whole;
}

function answerOf(plan: Plan, verdict: Verdict, remarks: readonly string[]): Answer {
  const json: JudgeOutput = {
    format: 'swardway-verdict',
    version: 1,
    bookId: plan.bookId,
    roundId: plan.roundId,
    feasible: verdict.feasible,
    violations: verdict.violations,
    totals: verdict.totals,
  };
  return { json, text: () => textOf(plan, json), remarks };
}

function textOf(plan: Plan, { feasible, violations, totals }: JudgeOutput): string {
  const rows = tableLines(
    [
      { title: 'broken', cell: (each) => each.code },
      { title: 'where', cell: (each) => each.where },
      { title: 'what', cell: (each) => each.message },
    ],
    violations,
  );
  return [
    `${plan.bookName}: ${plan.roundName}`,
    feasible ? 'Feasible: the plan breaks nothing.' : `Not feasible: ${counted(violations.length, 'violation')}.`,
    ...(feasible ? [] : ['', ...rows, '']),
    `${counted(totals.days, 'day')}, ${counted(totals.stops, 'stop')}, ${formatLargeArea(totals.treatedSqFt)}, ${counted(totals.refills, 'refill')}, ${counted(totals.unplaced, 'piece')} of work not placed`,
    `${formatDuration(totals.paidSec)} paid (${formatDuration(totals.overtimeSec)} overtime), ${formatDuration(totals.driveSec)} driving, ${formatDistance(totals.distanceM)}, ${formatMoney(totals.costUsd)}`,
  ].join('\n');
}
