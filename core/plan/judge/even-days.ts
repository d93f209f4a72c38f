import type { Problem } from '../problem/index.ts';
import type { Plan } from '../result/index.ts';
import { reportFigures } from './compare.ts';
import type { Ledger } from './ledger.ts';
import { COST_SLACK_USD, SUM_SLACK_SEC } from './tolerance.ts';

/** How unlike the days of a plan are, and what that costs. ms, nano-dollars */
export type EvenFigures = {
  readonly days: number;
  readonly meanMs: number;
  readonly shortestMs: number;
  readonly longestMs: number;
  readonly aboveMs: number;
  readonly cost: number;
};

/** Works the figures out from the lengths of the days that were played; they cost nothing where the problem has no price for them. */
export function evenFigures(problem: Problem, paidMs: readonly number[]): EvenFigures {
  const days = paidMs.length;
  if (days === 0) return { days, meanMs: 0, shortestMs: 0, longestMs: 0, aboveMs: 0, cost: 0 };
  const sorted = [...paidMs].sort((left, right) => left - right);
  const meanMs = Math.ceil(sorted.reduce((sum, each) => sum + each, 0) / days);
  const aboveMs = sorted.filter((each) => each > meanMs).reduce((sum, each) => sum + each - meanMs, 0);
  return {
    days,
    meanMs,
    shortestMs: sorted[0] ?? 0,
    longestMs: sorted.at(-1) ?? 0,
    aboveMs,
    cost: (problem.evenDays?.costPerMs ?? 0) * aboveMs,
  };
}

/** Holds what a plan says of the lengths of its days against what was found. */
export function checkEvenDays(ledger: Ledger, problem: Problem, plan: Plan, found: EvenFigures): void {
  const { evenDays } = problem;
  if (evenDays === undefined) return;
  const stated = plan.evenDays;
  if (stated === undefined) {
    ledger.add('figure-differs', 'evenDays', 'the plan does not say what days of unlike length cost');
    return;
  }
  const days = Math.max(1, found.days);
  const slack = SUM_SLACK_SEC;
  reportFigures(ledger, 'evenDays', [
    { name: 'usdPerHour', stated: stated.usdPerHour, found: evenDays.usdPerHour, slack: 0 },
    { name: 'meanSec', stated: stated.meanSec, found: found.meanMs / 1000, slack },
    { name: 'shortestSec', stated: stated.shortestSec, found: found.shortestMs / 1000, slack },
    { name: 'longestSec', stated: stated.longestSec, found: found.longestMs / 1000, slack },
    { name: 'aboveSec', stated: stated.aboveSec, found: found.aboveMs / 1000, slack: slack * days },
    { name: 'costUsd', stated: stated.costUsd, found: found.cost / 1e9, slack: COST_SLACK_USD },
  ]);
}
