import type { Book } from '../../book/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import { planActivities } from './activities.ts';
import { toSeconds } from './amounts.ts';
import { carryOf, leftOverOf } from './carry.ts';
import { evenDaysOf, unevenCostOf } from './even-days.ts';
import { groundOf } from './ground.ts';
import { levelsOf } from './levels.ts';
import { withReasons } from './load-words.ts';
import { loadsOf } from './loads.ts';
import { type Names, namesOf } from './names.ts';
import { otherWaysOf } from './other-ways.ts';
import { viewRoute } from './route.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './schema.ts';
import { stopsOf } from './stops.ts';
import { secondsIn, totalsOf } from './totals.ts';
import type { Plan, PlanDay } from './types.ts';
import { unplacedOf } from './unplaced.ts';
import { whatIfOf } from './what-if.ts';

const NANO_PER_CENT = 10_000_000;

/** Turns the whole numbers of a solution into the plan that people read: names, units, loads, levels and reasons. */
export function explainPlan(book: Book, problem: Problem, solution: Solution): Plan {
  const names = namesOf(book, problem);
  const routes = solution.routes
    .filter((route) => route.visits.length > 0)
    .sort((left, right) => left.slot - right.slot);
  const cost = routes.reduce((sum, route) => sum + route.cost, 0) + unevenCostOf(problem, routes);
  const days = routes.map((route) => planDay(book, problem, solution, names, route));
  const unplaced = unplacedOf(problem, solution, names);
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    bookId: book.id,
    bookName: book.name,
    roundId: problem.roundId,
    roundName: book.rounds.find((each) => each.id === problem.roundId)?.name ?? problem.roundId,
    invented: book.invented,
    problemHash: problem.hash,
    seed: solution.seed,
    iterations: solution.iterations,
    travel: problem.travelKind,
    days,
    unplaced,
    totals: totalsOf(days, unplaced.length, cost / NANO_PER_CENT),
    ...evenDaysOf(problem, routes),
    issues: problem.issues.map((each) => ({ ...each })),
  };
}

function planDay(book: Book, problem: Problem, solution: Solution, names: Names, route: RouteOutcome): PlanDay {
  const view = viewRoute(problem, route);
  const activities = planActivities(view, names);
  const loads = withReasons(problem, view.rig, loadsOf(view.rig, activities));
  const levels = levelsOf(problem, view.rig, names, activities);
  const rig = book.rigs.find((each) => each.id === view.rig.rigId);
  const stops = stopsOf(view, names, activities, loads, otherWaysOf(problem, solution, names, route));
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
    whatIf: whatIfOf(problem, solution, names, route),
  };
}
