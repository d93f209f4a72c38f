import { type Problem, visitMs } from '../problem/index.ts';
import { RefillPlacer, type RouteOutcome, type Solution, type Visit } from '../refills/index.ts';
import { unevenAdded } from './even.ts';
import { type Insertion, intoSlot, type PlanFacts, routesBySlot, visitsOf } from './insertions.ts';
import { Legs } from './legs.ts';
import type { OtherWay } from './types.ts';

/** Places in another rig's day that are tried for one visit. */
const MOST_PLACES = 2;

/**
 * What each visit of a day would take if it were done another way: by another of the rig's ways, the order of stops unchanged, or
 * by another rig on the same day, where that one has room. The refills of every changed day are placed anew. The quickest other way of
 * every visit comes first, then the others, until `most` days have been placed.
 *
 * @param slot slot of a route of the solution; a slot without a route has no answers
 */
export function explainChoices(problem: Problem, solution: Solution, slot: number, most: number): readonly OtherWay[] {
  const facts: PlanFacts = { problem, legs: new Legs(problem), routes: routesBySlot(solution) };
  const route = facts.routes.get(slot);
  if (route === undefined || route.visits.length === 0) return [];
  const asked = route.visits.flatMap((visit, index) => questionsOf(facts, route, visit, index));
  const inTurn = asked.toSorted((one, other) => one.turn - other.turn || one.visit - other.visit);
  const found: OtherWay[] = [];
  let left = most;
  for (const question of inTurn) {
    if (left <= 0) break;
    left -= question.placings;
    const way = question.answer();
    if (way !== null) found.push(way);
  }
  return found.toSorted((one, other) => one.visit - other.visit || one.addedCost - other.addedCost);
}

type Question = {
  readonly visit: number;
  /** Number among the questions about the same visit. */
  readonly turn: number;
  readonly placings: number;
  readonly answer: () => OtherWay | null;
};

function questionsOf(facts: PlanFacts, route: RouteOutcome, visit: Visit, index: number): readonly Question[] {
  const { problem } = facts;
  const job = problem.jobs[visit.job];
  const { rig, day } = problem.slots[route.slot] ?? { rig: -1, day: -1 };
  const modes = job?.modes[rig] ?? [];
  const others = [...modes.entries()]
    .filter(([mode]) => mode !== visit.mode)
    .toSorted(([, one], [, other]) => visitMs(one) - visitMs(other));
  const slots = [...problem.slots.entries()].filter(
    ([slot, each]) => slot !== route.slot && each.day === day && (job?.modes[each.rig] ?? []).length > 0,
  );
  return [
    ...others.map(([mode], turn) => ({
      visit: index,
      turn,
      placings: 1,
      answer: () => anotherMode(facts, route, index, mode),
    })),
    ...slots.map(([slot], at) => ({
      visit: index,
      turn: others.length + at,
      placings: 1 + MOST_PLACES,
      answer: () => anotherRig(facts, route, index, slot),
    })),
  ];
}

function anotherMode(facts: PlanFacts, route: RouteOutcome, index: number, mode: number): OtherWay | null {
  const visits = route.visits.map((each, at) => (at === index ? { ...each, mode } : each));
  const after = placed(facts.problem, route.slot, visits);
  if (after === null) return null;
  const addedCost = after.cost - route.cost + unevenAdded(facts, new Map([[route.slot, after.paidMs]]));
  const added = { addedMs: after.paidMs - route.paidMs, addedCost };
  return { visit: index, slot: route.slot, position: index, mode, ...added };
}

function anotherRig(facts: PlanFacts, route: RouteOutcome, index: number, slot: number): OtherWay | null {
  const { problem } = facts;
  const job = route.visits[index]?.job ?? -1;
  const rest = placed(
    problem,
    route.slot,
    route.visits.filter((_, at) => at !== index),
  );
  const likely = intoSlot(facts, job, slot)
    .toSorted((one, other) => one.expectedMs - other.expectedMs)
    .slice(0, MOST_PLACES);
  const ways = likely.flatMap((insertion): OtherWay[] => {
    const after = placed(problem, slot, inserted(facts, job, insertion));
    if (after === null || rest === null) return [];
    const before = facts.routes.get(slot);
    const addedMs = after.paidMs + rest.paidMs - route.paidMs - (before?.paidMs ?? 0);
    const lengths = new Map([
      [slot, after.paidMs],
      [route.slot, rest.paidMs],
    ]);
    const addedCost = after.cost + rest.cost - route.cost - (before?.cost ?? 0) + unevenAdded(facts, lengths);
    return [{ visit: index, slot, position: insertion.position, mode: insertion.mode, addedMs, addedCost }];
  });
  return ways.toSorted((one, other) => one.addedCost - other.addedCost)[0] ?? null;
}

function inserted(facts: PlanFacts, job: number, { slot, position, mode }: Insertion): readonly Visit[] {
  return visitsOf(facts, slot).toSpliced(position, 0, { job, mode });
}

/** The day of these visits, cut down to them so that placing is cheap however large the round is; null where it cannot be done. */
function placed(problem: Problem, slot: number, visits: readonly Visit[]): RouteOutcome | null {
  const day = { ...problem, jobs: visits.flatMap((visit) => problem.jobs[visit.job] ?? []) };
  const own = visits.map((visit, job) => ({ job, mode: visit.mode }));
  const placement = new RefillPlacer(day).place(slot, own, 'careful');
  return placement.kind === 'placed' ? placement.outcome : null;
}
