import { ok } from '../../../core/base/index.ts';
import { judgePlan, type Verdict } from '../../../core/plan/judge/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { formatDistance, formatDuration, formatLargeArea, formatMoney } from '../../../core/units/index.ts';
import { type Answer, type Command, fileOf } from '../command.ts';
import { problemOfPlan, ROADS_OPTION, readBookFile, readPlanFile, withDrives } from '../input/index.ts';
import type { JudgeOutput } from '../output/index.ts';
import { counted, issueLines, rigDays, tableLines } from '../text/index.ts';

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
  options: [ROADS_OPTION],
  schema: 'judge',
  example: 'npx swardway judge sample-routes/residential-day.json plan.json',
  run: async (typed, world) => {
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const book = await withDrives(read.value, typed, world);
    if (!book.ok) return book;
    const plan = await readPlanFile(fileOf(typed, 'PLAN'));
    if (!plan.ok) return plan;
    const problem = problemOfPlan(book.value, plan.value);
    if (!problem.ok) return problem;
    return ok(answerOf(plan.value, judgePlan(problem.value, plan.value), issueLines(book.value.issues)));
  },
};

function answerOf(plan: Plan, verdict: Verdict, remarks: readonly string[]): Answer {
  const json: JudgeOutput = {
    format: 'swardway-verdict',
    version: 1,
    bookId: plan.bookId,
    roundId: plan.roundId,
    feasible: verdict.feasible,
    violations: verdict.violations.map(({ code, where, message }) => ({ code, where, message })),
    totals: verdict.totals,
  };
  return { json, text: () => textOf(plan, json), remarks };
}

/** The date of every day on which something is done. */
const workedDates = (plan: Plan): readonly string[] =>
  plan.days.flatMap((day) => (day.activities.length + day.stops.length > 0 ? [day.date] : []));

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
    `${rigDays(workedDates(plan))}, ${counted(totals.stops, 'stop')}, ${formatLargeArea(totals.treatedSqFt)}, ${counted(totals.refills, 'refill')}, ${counted(totals.unplaced, 'piece')} of work not placed`,
    `${formatDuration(totals.paidSec)} paid (${formatDuration(totals.overtimeSec)} overtime), ${formatDuration(totals.driveSec)} driving, ${formatDistance(totals.distanceM)}, ${formatMoney(totals.costUsd)}`,
  ].join('\n');
}
