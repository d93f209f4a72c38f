import { formatDuration, formatMoney, quantity } from '../../units/index.ts';
import { daysAboveMs, type Problem, unevenCost } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import { toSeconds } from './amounts.ts';
import type { Plan } from './types.ts';

type Length = Pick<RouteOutcome, 'paidMs'>;

const NANO_PER_CENT = 10_000_000;

/** What the lengths of these days cost for being unlike; 0 where the problem has no price for it. nano-dollars */
export function unevenCostOf(problem: Problem, routes: readonly Length[]): number {
  return unevenCost(problem, lengthsOf(routes));
}

/** The same for the plan, with the figures that it comes from; nothing where the problem has no price for it. */
export function evenDaysOf(problem: Problem, routes: readonly Length[]): Pick<Plan, 'evenDays'> {
  if (problem.evenDays === undefined) return {};
  const lengths = lengthsOf(routes);
  const mean = Math.ceil(lengths.reduce((sum, each) => sum + each, 0) / Math.max(1, lengths.length));
  const figures = {
    usdPerHour: problem.evenDays.usdPerHour,
    meanSec: toSeconds(mean),
    shortestSec: toSeconds(lengths.reduce((least, each) => Math.min(least, each), lengths[0] ?? 0)),
    longestSec: toSeconds(lengths.reduce((most, each) => Math.max(most, each), 0)),
    aboveSec: toSeconds(daysAboveMs(lengths)),
    costUsd: Math.round(unevenCost(problem, lengths) / NANO_PER_CENT) / 100,
  };
  return { evenDays: { ...figures, words: wordsOf(figures) } };
}

function lengthsOf(routes: readonly Length[]): readonly number[] {
  return routes.map((route) => route.paidMs);
}

function wordsOf(figures: Omit<NonNullable<Plan['evenDays']>, 'words'>): string {
  const time = (seconds: number): string => formatDuration(quantity(seconds));
  const money = (dollars: number): string => formatMoney(quantity(dollars));
  const { usdPerHour, meanSec, shortestSec, longestSec, aboveSec, costUsd } = figures;
  return `Rigs' days last ${time(shortestSec)} to ${time(longestSec)}, ${time(meanSec)} in the mean; ${time(aboveSec)} above it at ${money(usdPerHour)} an hour: ${money(costUsd)}.`;
}
