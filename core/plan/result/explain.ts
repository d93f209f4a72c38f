import type { Book } from '../../book/index.ts';
import type { Problem } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import { evenDaysOf, unevenCostOf } from './even-days.ts';
import { namesOf } from './names.ts';
import { otherWaysOf } from './other-ways.ts';
import { planDay } from './plan-day.ts';
import { plannedLate } from './planned-late.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './schema.ts';
import { totalsOf } from './totals.ts';
import type { Plan } from './types.ts';
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
  const days = routes.map((route) =>
    planDay(book, problem, names, route, {
      otherWays: otherWaysOf(problem, solution, names, route),
      whatIf: whatIfOf(problem, solution, names, route),
    }),
  );
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
    ...(problem.travelCredit === undefined ? {} : { travelCredit: problem.travelCredit }),
    days,
    unplaced,
    totals: totalsOf(days, unplaced.length, cost / NANO_PER_CENT),
    ...evenDaysOf(problem, routes),
    ...(problem.outages === undefined ? {} : { outages: problem.outages.map((each) => ({ ...each })) }),
    ...(problem.done === undefined ? {} : { done: problem.done.map((each) => ({ ...each })) }),
    issues: [...problem.issues, ...plannedLate(problem, names, days)].map((each) => ({ ...each })),
  };
}
