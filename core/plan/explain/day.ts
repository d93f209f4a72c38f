import { MS_PER_HOUR } from '../../units/index.ts';
import type { Problem } from '../problem/index.ts';
import { RefillPlacer, type RouteOutcome, type Solution } from '../refills/index.ts';
import { unevenAdded } from './even.ts';
import { intoSlot, type PlanFacts, routesBySlot } from './insertions.ts';
import { Legs } from './legs.ts';
import { lift } from './lift.ts';
import { Trials } from './trials.ts';
import type { Limit, WhatIf } from './types.ts';

const GALLON_PARTS = 100;
/** Jobs without a place that are tried in a day that is an hour longer, and the places of the day tried for each. */
const MOST_JOBS = 20;
const MOST_PLACES = 2;
/** Effort for one day; see `Trials`. */
const MOST_TRIALS = 120;

/**
 * What one day of a plan would be with one more hour of shift, one more gallon of nurse tank and one more gallon in each tank that it
 * draws on; the order of its stops unchanged. Figures that would change nothing are in it as well, with 0.
 *
 * @param slot slot of a route of the solution; a slot without a route has no figures
 */
export function explainDay(problem: Problem, solution: Solution, slot: number): readonly WhatIf[] {
  const route = solution.routes.find((each) => each.slot === slot);
  const rig = problem.slots[slot]?.rig ?? -1;
  const owned = problem.rigs[rig];
  if (route === undefined || owned === undefined || route.visits.length === 0) return [];
  const facts: PlanFacts = { problem, legs: new Legs(problem), routes: routesBySlot(solution) };
  const day = alone(problem, route);
  const tanks = drawnTanks(problem, rig, route);
  const nurse: Limit[] = tanks.length > 0 && owned.nurseParts > 0 ? [{ kind: 'nurse-tank' }] : [];
  return [
    oneHour(facts, solution, day, rig, route),
    ...[...nurse, ...tanks].map((limit) => oneGallon(facts, day, rig, route, limit)),
  ];
}

/** The problem cut down to the jobs of one route. */
function alone(problem: Problem, route: RouteOutcome): Problem {
  return { ...problem, jobs: route.visits.flatMap((visit) => problem.jobs[visit.job] ?? []) };
}

function drawnTanks(problem: Problem, rig: number, route: RouteOutcome): readonly Limit[] {
  const draws = route.visits
    .flatMap((visit) => problem.jobs[visit.job]?.modes[rig]?.[visit.mode]?.ops ?? [])
    .flatMap((op) => op.draws.map((draw) => draw.compartment));
  const tanks = [...new Set(draws)].filter((each) => problem.rigs[rig]?.compartments[each]?.kind === 'tank');
  return tanks.sort((left, right) => left - right).map((compartment): Limit => ({ kind: 'compartment', compartment }));
}

/** A regular hour more: what overtime it takes the place of, and which work without a place it would let in. */
function oneHour(facts: PlanFacts, solution: Solution, day: Problem, rig: number, route: RouteOutcome): WhatIf {
  const longer = withHour(day, rig);
  return {
    what: 'shift',
    compartment: -1,
    amount: MS_PER_HOUR,
    ...saved(facts, route, placed(longer, route)),
    jobs: jobsLetIn(facts, solution, rig, route.slot),
  };
}

function withHour(problem: Problem, rig: number): Problem {
  const rigs = problem.rigs.map((each, at) => (at === rig ? { ...each, shiftMs: each.shiftMs + MS_PER_HOUR } : each));
  return { ...problem, rigs };
}

function jobsLetIn(facts: PlanFacts, solution: Solution, rig: number, slot: number): readonly number[] {
  const trials = new Trials(facts, MOST_TRIALS);
  const longer = withHour(facts.problem, rig);
  return solution.unserved.slice(0, MOST_JOBS).filter((job) => {
    const places = intoSlot(facts, job, slot).filter((each) => each.allowed);
    const likely = [...places].sort((left, right) => left.expectedMs - right.expectedMs).slice(0, MOST_PLACES);
    return trials.left > 0 && likely.some((each) => trials.fits(longer, job, each));
  });
}

function oneGallon(facts: PlanFacts, day: Problem, rig: number, route: RouteOutcome, limit: Limit): WhatIf {
  const larger = lift(day, rig, limit, GALLON_PARTS);
  return {
    what: limit.kind === 'compartment' ? 'compartment' : 'nurse-tank',
    compartment: limit.kind === 'compartment' ? limit.compartment : -1,
    amount: GALLON_PARTS,
    ...saved(facts, route, placed(larger, route)),
    jobs: [],
  };
}

/** The same stops with their refills placed anew: with all care where a quick look does not do better than the plan. */
function placed(problem: Problem, route: RouteOutcome): RouteOutcome | null {
  const visits = route.visits.map((visit, job) => ({ job, mode: visit.mode }));
  const placer = new RefillPlacer(problem);
  const quick = placer.place(route.slot, visits, 'quick');
  if (quick.kind === 'placed' && quick.outcome.cost < route.cost) return quick.outcome;
  const careful = placer.place(route.slot, visits, 'careful');
  return careful.kind === 'placed' ? careful.outcome : null;
}

/** The plan's own route holds with more of anything, so nothing is ever lost. */
function saved(
  facts: PlanFacts,
  before: RouteOutcome,
  after: RouteOutcome | null,
): Pick<WhatIf, 'savedMs' | 'savedCost'> {
  if (after === null) return { savedMs: 0, savedCost: 0 };
  const savedCost = before.cost - after.cost - unevenAdded(facts, new Map([[before.slot, after.paidMs]]));
  return savedCost <= 0 ? { savedMs: 0, savedCost: 0 } : { savedMs: before.paidMs - after.paidMs, savedCost };
}
