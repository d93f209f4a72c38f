import { MS_PER_MINUTE } from '../../units/index.ts';
import { type Job, type Problem, visitMs } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import { carriedWays, type Question } from './carried-ways.ts';
import { hourWays } from './hour-ways.ts';
import { availableMs, type Insertion, insertionsOf, type PlanFacts, routesBySlot } from './insertions.ts';
import { Legs } from './legs.ts';
import { lift, NO_LIMIT } from './lift.ts';
import { carryingLimits, liftAll, stationLimits } from './limits.ts';
import { Trials } from './trials.ts';
import type { Alone, Way, WhyNot } from './types.ts';

/** Insertions of one job into one rig that are placed at most for each question. */
const MOST_INSERTIONS = 6;
/** Insertions at which an overrun is proved at most, and the time that is then added to the rough one. */
const MOST_PROVED = 3;
/** No paid day can be made longer by this much. */
const FAR_MS = 86_400_000;
const SPARES_MS = [0, 30 * MS_PER_MINUTE, 120 * MS_PER_MINUTE] as const;
/** Effort for a whole plan, about half a millisecond each; once they are used up every job gets one insertion and is told of time alone. */
const MOST_TRIALS = 400;

/**
 * Why the jobs without a place are in no rig's days: one answer for each of them and each rig, jobs in the order of
 * `solution.unserved`.
 *
 * Every insertion into the days of the plan is gone through; those whose least time is too long are ruled out for every limit but
 * the end of the day. The most likely ones (up to six for one job and rig, fewer where very many jobs have no place) are placed,
 * once with each single limit taken away. A limit that lets the job in is then moved only as far as it must, and placed again.
 */
export function explainUnserved(problem: Problem, solution: Solution): readonly WhyNot[] {
  const facts: PlanFacts = { problem, legs: new Legs(problem), routes: routesBySlot(solution) };
  const trials = new Trials(facts, MOST_TRIALS);
  return solution.unserved.flatMap((job) => problem.rigs.map((_, rig) => whyNot(facts, trials, job, rig)));
}

function whyNot(facts: PlanFacts, trials: Trials, job: number, rig: number): WhyNot {
  const { problem } = facts;
  const insertions = insertionsOf(facts, job, rig);
  const base = { job, rig, ways: [], tried: 0, insertions: insertions.length, every: true };
  const reachable = (problem.jobs[job]?.modes[rig] ?? []).length > 0;
  if (!reachable) return { ...base, kind: 'out-of-reach', alone: { kind: 'never' } };
  const overMs = leastAloneMs(facts, job, rig) - dayMs(problem, rig);
  if (overMs >= FAR_MS) return { ...base, kind: 'far-too-long', alone: { kind: 'too-long', overMs } };
  const alone = aloneOn(problem, trials, job, rig);
  const most = trials.left > 0 ? MOST_INSERTIONS : 1;
  const allowed = insertions.filter((each) => each.allowed);
  const inTime = allowed.filter((each) => each.leastMs <= availableMs(problem, each.slot));
  const likely = inTime.slice(0, most);
  if (likely.some((each) => trials.fits(problem, job, each))) return { ...base, ...room(alone, likely.length) };
  const days = dayWay(problem, trials, job, insertions.filter((each) => !each.allowed).slice(0, most));
  const timed = timeWay(problem, trials, job, rig, allowed.slice(0, most));
  const others = trials.left > 0 ? otherWays(facts, trials, job, rig, likely) : [];
  const ways = [...days, ...timed, ...others];
  // The looks above may overlook a way; what is said now is proved.
  const without = insertions.filter((each) => each.allowed && ways.some((way) => same(way, each)));
  if (without.some((each) => trials.place(problem, job, each) !== null))
    return { ...base, ...room(alone, likely.length) };
  const day = ways.length > 0 ? null : weatheredDay(problem, trials, job, likely);
  if (day !== null) return { ...base, ...room(alone, likely.length), kind: 'weather', day };
  const tried = Math.min(most, insertions.length);
  const every = trials.left > 0 && insertions.length <= most;
  return { ...base, alone, kind: ways.length > 0 ? 'limits' : 'no-single-cause', ways, tried, every };
}

/** Time that the paid day of a rig may take. ms */
function dayMs(problem: Problem, rig: number): number {
  const each = problem.rigs[rig];
  return each === undefined ? 0 : each.shiftMs + each.overtimeMs;
}

/** The least that the paid day takes with the job alone in it, however refills are placed: by its quickest mode. ms */
function leastAloneMs({ problem, legs }: PlanFacts, job: number, rig: number): number {
  const place = problem.jobs[job]?.place ?? 0;
  const { depot = 0, morningMs = 0, eveningMs = 0 } = problem.rigs[rig] ?? {};
  const modes = problem.jobs[job]?.modes[rig] ?? [];
  const work = Math.min(...modes.map(visitMs));
  return morningMs + legs.leastMs(depot, place) + work + legs.leastMs(place, depot) + eveningMs;
}

function room(alone: Alone, tried: number): Pick<WhyNot, 'kind' | 'alone' | 'tried' | 'every'> {
  return { kind: 'room', alone, tried, every: false };
}

function same(way: Way, { slot, position, mode }: Insertion): boolean {
  return way.slot === slot && way.position === position && way.mode === mode;
}

/** A day into which the job would go if weather left it all hours; null for none. */
function weatheredDay(problem: Problem, trials: Trials, job: number, among: readonly Insertion[]): number | null {
  const hours = problem.jobs[job]?.treatHours;
  if (hours === undefined) return null;
  const dayOf = ({ slot }: Insertion): number => problem.slots[slot]?.day ?? -1;
  const jobs = problem.jobs.map((each, at) => (at === job ? withoutTreatHours(each) : each));
  const open = { ...problem, jobs };
  const fitting = among.find((each) => (hours[dayOf(each)] ?? null) !== null && trials.fits(open, job, each));
  return fitting === undefined ? null : dayOf(fitting);
}

/** The best that the rig could do of the job on an empty day, by its first mode that can. */
function aloneOn(problem: Problem, trials: Trials, job: number, rig: number): Alone {
  const slot = problem.slots.findIndex((each) => each.rig === rig);
  let overMs = Number.POSITIVE_INFINITY;
  const modes = problem.jobs[job]?.modes[rig] ?? [];
  for (const mode of slot < 0 ? [] : modes.keys()) {
    const answer = trials.placeAlone(job, slot, mode);
    if (answer.kind === 'placed') return { kind: 'fits', paidMs: answer.outcome.paidMs };
    if (answer.fault.kind === 'too-long') overMs = Math.min(overMs, answer.fault.overMs);
  }
  return Number.isFinite(overMs) ? { kind: 'too-long', overMs } : { kind: 'never' };
}

/** The least that a day would have to be longer. */
function timeWay(
  problem: Problem,
  trials: Trials,
  job: number,
  rig: number,
  among: readonly Insertion[],
): readonly Way[] {
  const endless = lift(problem, rig, { kind: 'time' }, NO_LIMIT);
  const over = among
    .map((insertion) => ({
      insertion,
      overMs: trials.roughPaidMs(endless, job, insertion) - availableMs(problem, insertion.slot),
    }))
    .filter((each) => Number.isFinite(each.overMs))
    .sort((left, right) => left.overMs - right.overMs);
  for (const { insertion, overMs } of over.slice(0, MOST_PROVED)) {
    const amount = provedOver(problem, trials, { job, rig, insertion }, Math.max(MS_PER_MINUTE, overMs));
    if (amount !== null) return [{ ...at(insertion), limit: { kind: 'time' }, amount, fromMs: 0, toMs: 0 }];
  }
  return [];
}

type Placing = { readonly job: number; readonly rig: number; readonly insertion: Insertion };

/** Overrun with which the insertion is really placed, whole minutes: the rough one, or more where waits or breaks come in. */
function provedOver(
  problem: Problem,
  trials: Trials,
  { job, rig, insertion }: Placing,
  roughMs: number,
): number | null {
  const place = (amount: number) => trials.place(lift(problem, rig, { kind: 'time' }, amount), job, insertion);
  for (const spareMs of SPARES_MS) {
    const amount = minutesUp(roughMs + spareMs);
    const route = place(amount);
    if (route === null) continue;
    const tight = minutesUp(route.paidMs - availableMs(problem, insertion.slot));
    return tight > 0 && tight < amount && place(tight) !== null ? tight : amount;
  }
  return null;
}

function minutesUp(ms: number): number {
  return Math.ceil(ms / MS_PER_MINUTE) * MS_PER_MINUTE;
}

/** Another day on which the job is not allowed and would fit; never one on which a label, weather, the timing or the days of a split forbid it. */
function dayWay(problem: Problem, trials: Trials, job: number, insertions: readonly Insertion[]): readonly Way[] {
  const closed = problem.jobs[job]?.closed;
  const mayOpen = (slot: number): boolean => {
    const code = closed?.[problem.slots[slot]?.day ?? -1]?.code;
    return code !== 'label' && code !== 'weather' && code !== 'interval' && code !== 'timing';
  };
  const fitting = insertions.find(
    (each) => mayOpen(each.slot) && each.leastMs <= availableMs(problem, each.slot) && trials.fits(problem, job, each),
  );
  return fitting === undefined ? [] : [{ ...at(fitting), limit: { kind: 'day' }, amount: 0, fromMs: 0, toMs: 0 }];
}

/** Limits other than the end of the day, tried one by one where the job fits once all of them are away. */
function otherWays(
  facts: PlanFacts,
  trials: Trials,
  job: number,
  rig: number,
  insertions: readonly Insertion[],
): readonly Way[] {
  const { problem } = facts;
  const limits = carryingLimits(problem, rig, problem.jobs[job]?.modes[rig] ?? []);
  const open = { ...problem, jobs: problem.jobs.map(allDay) };
  const free = liftAll(open, rig, [...limits, ...stationLimits(problem)]);
  const hopeful = insertions.filter((each) => trials.seems(free, job, each));
  if (hopeful.length === 0) return [];
  const question: Question = { facts, trials, job, rig, insertions: hopeful };
  return [...hourWays(question), ...carriedWays(question, limits)];
}

function allDay(job: Job): Job {
  return { ...job, openMs: Math.min(job.openMs, 0), closeMs: Math.max(job.closeMs, 86_400_000) };
}

function withoutTreatHours({ treatHours: _, ...job }: Job): Job {
  return job;
}

function at({ slot, position, mode }: Insertion): Pick<Way, 'slot' | 'position' | 'mode'> {
  return { slot, position, mode };
}
