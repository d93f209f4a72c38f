import type { Problem } from '../problem/index.ts';
import type { Plan, PlanDay } from '../result/index.ts';
import { checkCoverage, emptyCoverage } from './coverage.ts';
import { playDay } from './day.ts';
import { type DaySums, emptySums, startOfDay } from './day-state.ts';
import { checkEvenDays, evenFigures } from './even-days.ts';
import { checkDayFigures, checkTotals } from './figures.ts';
import { createLedger, type Ledger } from './ledger.ts';
import { type Lookup, lookupOf, slotKey } from './lookup.ts';
import type { JudgeTotals, Verdict } from './types.ts';

/**
 * Re-runs a plan against the frozen problem with code of its own: every activity, level, weight, window and figure.
 * Knows nothing of how the plan was made; a plan from a file or from dragged stops is judged alike. Never throws on a plan that
 * follows the schema. `feasible` is true exactly where nothing at all is broken.
 */
export function judgePlan(problem: Problem, plan: Plan): Verdict {
  const ledger = createLedger();
  const lookup = lookupOf(problem);
  if (plan.problemHash !== problem.hash) {
    ledger.add('plan-stale', 'plan', 'made for another state of the book: plan again, or judge it with that book');
  }
  const coverage = emptyCoverage();
  const seenSlots = new Set<string>();
  const sums: DaySums[] = [];
  for (const day of plan.days) {
    ledger.standAt({ date: day.date, rigId: day.rigId, activity: -1 });
    const rigNumber = admitDay(lookup, ledger, day, seenSlots);
    const rig = problem.rigs[rigNumber];
    if (rig === undefined || isIdle(day)) continue;
    const state = startOfDay(lookup, ledger, coverage, day, rig, rigNumber);
    playDay(state);
    checkDayFigures(state);
    sums.push(state.sums);
  }
  ledger.standAt(null);
  checkCoverage(lookup, ledger, coverage, plan);
  const total = addUp(sums);
  const even = evenFigures(
    problem,
    sums.map((each) => each.paidMs),
  );
  const totals = totalsOf({ ...total, cost: total.cost + even.cost }, sums.length, plan);
  checkEvenDays(ledger, problem, plan, even);
  checkTotals(ledger, plan, totals, total.stationRefills);
  return { feasible: ledger.violations.length === 0, violations: ledger.violations, totals };
}

function isIdle(day: PlanDay): boolean {
  return day.activities.length === 0 && day.stops.length === 0;
}

/** The rig is known, works on that date, and is not planned twice. Returns the rig's number or -1. */
function admitDay(lookup: Lookup, ledger: Ledger, day: PlanDay, seen: Set<string>): number {
  const where = `${day.date} ${day.rigId}`;
  const rig = lookup.rigOf.get(day.rigId) ?? -1;
  const date = lookup.dayOf.get(day.date) ?? -1;
  if (rig < 0) ledger.add('rig-unknown', where, `the problem has no rig "${day.rigId}"`);
  else if (!lookup.slots.has(slotKey(rig, date))) {
    ledger.add('day-not-allowed', where, `this rig does not work on ${day.date}`);
  }
  if (seen.has(where)) ledger.add('time-not-possible', where, 'this rig is planned twice on this date');
  seen.add(where);
  return rig;
}

function addUp(sums: readonly DaySums[]): DaySums {
  const total = emptySums();
  for (const day of sums) {
    for (const key of Object.keys(total) as (keyof DaySums)[]) total[key] += day[key];
  }
  return total;
}

function totalsOf(total: DaySums, days: number, plan: Plan): JudgeTotals {
  return {
    days,
    stops: total.stops,
    treatedSqFt: dusted(total.treatedSqFt),
    coveredSqFt: dusted(total.coveredSqFt),
    handTrimSqFt: dusted(total.handTrimSqFt),
    notReachedSqFt: dusted(total.notReachedSqFt),
    paidSec: total.paidMs / 1000,
    overtimeSec: total.overtimeMs / 1000,
    driveSec: total.driveMs / 1000,
    distanceM: total.distanceM,
    refills: total.refills,
    costUsd: wholeCents(total.cost),
    unplaced: plan.unplaced.length,
  };
}

/** Shares of the pieces of an op add up to it but for floating-point dust. */
function dusted(squareFeet: number): number {
  return Math.round(squareFeet * 1e6) / 1e6;
}

/** Dollars in whole cents out of billionths; half a cent counts as a whole one in spite of floating-point dust. */
function wholeCents(cost: number): number {
  return Math.floor(cost / 1e7 + 0.5 + 1e-7) / 100;
}
