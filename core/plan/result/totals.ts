import { sumProducts } from './amounts.ts';
import { clean } from './loads.ts';
import type { PlanActivity, PlanDay, PlanTotals } from './types.ts';

/** Time spent in one kind of activity, seconds. */
export function secondsIn(activities: readonly PlanActivity[], kind: PlanActivity['kind']): number {
  return activities.reduce((sum, each) => sum + (each.kind === kind ? each.endSec - each.startSec : 0), 0);
}

/**
 * Sums over the days of a plan. The cost is handed in, since it is rounded once at the end: days in whole cents would add up to
 * a cent more or less.
 *
 * @param costCents what all days cost together, cents and fractions of them
 */
export function totalsOf(days: readonly PlanDay[], unplaced: number, costCents: number): PlanTotals {
  const sum = (pick: (day: PlanDay) => number): number => dust(days.reduce((total, day) => total + pick(day), 0));
  const activities = days.flatMap((day) => day.activities);
  const refills = activities.filter((each) => each.kind === 'refill');
  const loads = days.flatMap((day) => day.loads);
  return {
    days: days.length,
    stops: sum((day) => day.stops.length),
    treatedSqFt: sum((day) => day.treatedSqFt),
    coveredSqFt: sum((day) => day.coveredSqFt),
    handTrimSqFt: sum((day) => day.handTrimSqFt),
    notReachedSqFt: sum((day) => day.notReachedSqFt),
    paidSec: sum((day) => day.paidSec),
    overtimeSec: sum((day) => day.overtimeSec),
    driveSec: sum((day) => day.driveSec),
    distanceM: sum((day) => day.distanceM),
    refills: refills.length,
    fillPointVisits: refills.filter((each) => each.fillPointId !== '').length,
    loads: loads.length,
    costUsd: Math.round(dust(costCents)) / 100,
    unplaced,
    waterGal: clean(loads.reduce((total, load) => total + load.volumeGal, 0)),
    products: sumProducts(loads.map((load) => load.products)).map((each) => ({ ...each, amount: dust(each.amount) })),
  };
}

/** Takes the floating-point dust off a sum: a millionth is below every figure that is shown. */
function dust(sum: number): number {
  return Math.round(sum * 1e6) / 1e6;
}
