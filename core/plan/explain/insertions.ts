import { type Problem, visitMs } from '../problem/index.ts';
import type { RouteOutcome, Solution, Visit } from '../refills/index.ts';
import type { Legs } from './legs.ts';

/** A place for one job in a plan: before visit `position` of a slot's route, done in one of the rig's modes. */
export type Insertion = {
  readonly slot: number;
  readonly position: number;
  readonly mode: number;
  /** Whether the job may be done on that day. */
  readonly allowed: boolean;
  /** No placing of refills makes the paid day shorter than this. */
  readonly leastMs: number;
  /** What the paid day comes to if refills stay as they are. */
  readonly expectedMs: number;
};

/** The routes of a plan by slot, and shortest ways: what all questions about one plan share. */
export type PlanFacts = {
  readonly problem: Problem;
  readonly legs: Legs;
  readonly routes: ReadonlyMap<number, RouteOutcome>;
};

export function routesBySlot(solution: Solution): ReadonlyMap<number, RouteOutcome> {
  return new Map(solution.routes.map((route) => [route.slot, route]));
}

/** The visits that a slot has in the plan. */
export function visitsOf(facts: PlanFacts, slot: number): readonly Visit[] {
  return facts.routes.get(slot)?.visits ?? [];
}

/** Time that the paid day of a slot may take. ms */
export function availableMs(problem: Problem, slot: number): number {
  const rig = problem.rigs[problem.slots[slot]?.rig ?? -1];
  return rig === undefined ? 0 : rig.shiftMs + rig.overtimeMs;
}

/** Every insertion of a job into the days of a rig, the least overrun expected first. */
export function insertionsOf(facts: PlanFacts, job: number, rig: number): readonly Insertion[] {
  const found = facts.problem.slots.flatMap((slot, index) => (slot.rig === rig ? intoSlot(facts, job, index) : []));
  return found.sort(
    (left, right) => left.expectedMs - right.expectedMs || left.slot - right.slot || left.position - right.position,
  );
}

/** Every insertion of a job into one slot, in no order. */
export function intoSlot(facts: PlanFacts, job: number, slot: number): readonly Insertion[] {
  const { problem, legs } = facts;
  const { rig, day } = problem.slots[slot] ?? { rig: -1, day: -1 };
  const wanted = problem.jobs[job];
  const modes = wanted?.modes[rig] ?? [];
  if (wanted === undefined || modes.length === 0) return [];
  const places = placesOf(facts, slot);
  const least = leastDayMs(facts, slot, places);
  const paid = facts.routes.get(slot)?.paidMs ?? least;
  return places.slice(1).flatMap((after, position) => {
    const before = places[position] as number;
    const least1 = legs.leastMs(before, wanted.place) + legs.leastMs(wanted.place, after) - legs.leastMs(before, after);
    const direct = legs.direct(before, wanted.place) + legs.direct(wanted.place, after) - legs.direct(before, after);
    return modes.map((mode, index) => ({
      slot,
      position,
      mode: index,
      allowed: wanted.dayAllowed[day] === 1,
      leastMs: least + least1 + visitMs(mode),
      expectedMs: paid + direct + visitMs(mode),
    }));
  });
}

/** Where the day starts, the stops in their order, where it ends. */
function placesOf(facts: PlanFacts, slot: number): readonly number[] {
  const { problem } = facts;
  const rig = problem.rigs[problem.slots[slot]?.rig ?? -1];
  const depot = rig?.depot ?? 0;
  return [depot, ...visitsOf(facts, slot).map((visit) => problem.jobs[visit.job]?.place ?? 0), depot];
}

/** Driving, work, morning and evening of a day without refills, waits and breaks. */
function leastDayMs(facts: PlanFacts, slot: number, places: readonly number[]): number {
  const { problem, legs } = facts;
  const number = problem.slots[slot]?.rig ?? -1;
  const rig = problem.rigs[number];
  const driving = places.slice(1).reduce((sum, to, at) => sum + legs.leastMs(places[at] as number, to), 0);
  const work = visitsOf(facts, slot).reduce((sum, visit) => {
    const mode = problem.jobs[visit.job]?.modes[number]?.[visit.mode];
    return sum + (mode === undefined ? 0 : visitMs(mode));
  }, 0);
  return driving + work + (rig?.morningMs ?? 0) + (rig?.eveningMs ?? 0);
}
