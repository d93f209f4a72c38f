import type { Plan, PlanDay } from '../result/index.ts';
import { type Figure, reportFigures } from './compare.ts';
import type { DayState } from './day-state.ts';
import type { GroundSums } from './ground.ts';
import type { Ledger } from './ledger.ts';
import { checkLoads } from './loads.ts';
import { checkTold } from './told.ts';
import { COST_SLACK_USD, DISTANCE_SLACK_M, GROUND_SLACK_SQ_FT, SUM_SLACK_SEC } from './tolerance.ts';
import type { JudgeTotals } from './types.ts';

/** Holds the figures that a day states against those of the re-run. */
export function checkDayFigures(state: DayState): void {
  const { plan, sums, rig } = state;
  const startSec = rig.shiftStartMs / 1000;
  reportFigures(state.ledger, state.label, [
    { name: 'startSec', stated: plan.startSec, found: startSec, slack: SUM_SLACK_SEC },
    { name: 'endSec', stated: plan.endSec, found: startSec + sums.paidMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'paidSec', stated: plan.paidSec, found: sums.paidMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'overtimeSec', stated: plan.overtimeSec, found: sums.overtimeMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'driveSec', stated: plan.driveSec, found: sums.driveMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'treatSec', stated: plan.treatSec, found: sums.treatMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'refillSec', stated: plan.refillSec, found: sums.refillMs / 1000, slack: SUM_SLACK_SEC },
    { name: 'distanceM', stated: plan.distanceM, found: sums.distanceM, slack: DISTANCE_SLACK_M },
    ...groundFigures(plan, sums),
    { name: 'costUsd', stated: plan.costUsd, found: sums.cost / 1e9, slack: COST_SLACK_USD },
    { name: 'number of stops', stated: plan.stops.length, found: state.stops.length, slack: 0 },
  ]);
  checkStops(state, plan);
  checkLoads(state, plan);
}

const GROUND_SUMS = ['treatedSqFt', 'coveredSqFt', 'handTrimSqFt', 'notReachedSqFt'] as const;

function groundFigures(stated: GroundSums, found: GroundSums): readonly Figure[] {
  return GROUND_SUMS.map((name) => ({
    name,
    stated: stated[name],
    found: found[name],
    slack: GROUND_SLACK_SQ_FT,
  }));
}

function checkStops(state: DayState, plan: PlanDay): void {
  plan.stops.forEach((stop, index) => {
    const seen = state.stops[index];
    if (seen === undefined) return;
    const where = `${state.label}, stop ${index + 1}`;
    if (seen.propertyId !== stop.propertyId) {
      state.ledger.add('figure-differs', where, `"${stop.propertyId}" is listed, "${seen.propertyId}" is visited`);
      return;
    }
    reportFigures(state.ledger, where, [
      { name: 'number', stated: stop.number, found: index + 1, slack: 0 },
      { name: 'arriveSec', stated: stop.arriveSec, found: seen.arriveMs / 1000, slack: SUM_SLACK_SEC },
      { name: 'leaveSec', stated: stop.leaveSec, found: seen.leaveMs / 1000, slack: SUM_SLACK_SEC },
    ]);
    checkTold(state, stop, seen, where);
  });
}

/** Holds the totals that a plan states against those of the re-run. */
export function checkTotals(ledger: Ledger, plan: Plan, found: JudgeTotals, stationRefills: number): void {
  const { totals } = plan;
  const loads = plan.days.reduce((sum, day) => sum + day.loads.length, 0);
  const days = Math.max(1, found.days);
  reportFigures(ledger, 'totals', [
    { name: 'days', stated: totals.days, found: found.days, slack: 0 },
    { name: 'stops', stated: totals.stops, found: found.stops, slack: 0 },
    ...groundFigures(totals, found),
    { name: 'paidSec', stated: totals.paidSec, found: found.paidSec, slack: SUM_SLACK_SEC * days },
    { name: 'overtimeSec', stated: totals.overtimeSec, found: found.overtimeSec, slack: SUM_SLACK_SEC * days },
    { name: 'driveSec', stated: totals.driveSec, found: found.driveSec, slack: SUM_SLACK_SEC * days },
    { name: 'distanceM', stated: totals.distanceM, found: found.distanceM, slack: DISTANCE_SLACK_M * days },
    { name: 'refills', stated: totals.refills, found: found.refills, slack: 0 },
    { name: 'fillPointVisits', stated: totals.fillPointVisits, found: stationRefills, slack: 0 },
    { name: 'loads', stated: totals.loads, found: loads, slack: 0 },
    { name: 'costUsd', stated: totals.costUsd, found: found.costUsd, slack: COST_SLACK_USD * days },
    { name: 'unplaced', stated: totals.unplaced, found: found.unplaced, slack: 0 },
  ]);
}
