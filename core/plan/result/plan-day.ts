import { canonicalJson } from '../../base/index.ts';
import type { Book } from '../../book/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import { planActivities } from './activities.ts';
import { toSeconds } from './amounts.ts';
import { carryOf, leftOverOf } from './carry.ts';
import { groundOf } from './ground.ts';
import { levelsOf } from './levels.ts';
import { withReasons } from './load-words.ts';
import { loadsOf, type Treat } from './loads.ts';
import type { Names } from './names.ts';
import { isHandTrim, type RouteView, viewRoute } from './route.ts';
import { stopsOf } from './stops.ts';
import { secondsIn } from './totals.ts';
import type { PlanDay, PlanStop } from './types.ts';

/** What is told of a day besides the day itself; it takes longer to find than all the rest. */
export type Besides = {
  /** For each visit. */
  readonly otherWays: readonly PlanStop['otherWays'][];
  readonly whatIf: PlanDay['whatIf'];
};

const NANO_PER_CENT = 10_000_000;

/** One rig's day in names, units, loads and levels. */
export function planDay(
  book: Book,
  problem: Problem,
  names: Names,
  route: RouteOutcome,
  { otherWays, whatIf }: Besides,
): PlanDay {
  const view = viewRoute(problem, route);
  const activities = planActivities(view, names);
  const loads = withReasons(problem, view.rig, loadsOf(view.rig, activities, leftShares(view)));
  const levels = levelsOf(problem, view.rig, names, activities);
  const rig = book.rigs.find((each) => each.id === view.rig.rigId);
  const stops = stopsOf(view, names, activities, loads, otherWays);
  const carry = carryOf(book, view, names, activities, loads);
  return {
    date: problem.dates[view.slot.day] ?? '',
    rigId: view.rig.rigId,
    rigName: rig?.name ?? view.rig.rigId,
    startSec: toSeconds(view.rig.shiftStartMs),
    endSec: toSeconds(view.rig.shiftStartMs + route.paidMs),
    paidSec: toSeconds(route.paidMs),
    overtimeSec: toSeconds(Math.max(0, route.paidMs - view.rig.shiftMs)),
    driveSec: secondsIn(activities, 'drive'),
    treatSec: secondsIn(activities, 'treat'),
    refillSec: secondsIn(activities, 'refill') + secondsIn(activities, 'pour'),
    distanceM: route.distanceM,
    ...groundOf(stops),
    costUsd: Math.round(route.cost / NANO_PER_CENT) / 100,
    stops,
    loads,
    levels,
    activities,
    carry,
    carryWeightLb: Math.round(carry.reduce((sum, each) => sum + each.weightLb, 0) * 10) / 10,
    payloadLb: rig?.payloadLb ?? 0,
    leftOver: leftOverOf(levels, activities, names),
    whatIf,
  };
}

/** Finds, for a piece of work, what of the ground of its op the machine does not reach, as a share. */
function leftShares(view: RouteView): (treat: Treat) => number {
  const shares = new Map<string, number>();
  view.route.visits.forEach((_, index) => {
    view.visit(index).mode.ops.forEach((__, at) => {
      const { op, task } = view.op(index, at);
      const left = op.ground?.leftUnits ?? 0;
      if (left > 0) shares.set(workKey({ ...task, method: op.method, handTrim: isHandTrim(op) }), left / op.areaUnits);
    });
  });
  return (treat) => (shares.size === 0 ? 0 : (shares.get(workKey(treat)) ?? 0));
}

type Work = Pick<Treat, 'propertyId' | 'zoneId' | 'treatmentId' | 'step' | 'method'> & {
  readonly handTrim?: boolean | undefined;
};

function workKey({ propertyId, zoneId, treatmentId, step, method, handTrim = false }: Work): string {
  return canonicalJson([propertyId, zoneId, treatmentId, step, method, handTrim]);
}
