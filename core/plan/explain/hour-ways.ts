import type { Problem } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import type { Question } from './carried-ways.ts';
import { type Broken, brokenStations, brokenVisits } from './hours.ts';
import { type Insertion, visitsOf } from './insertions.ts';
import { lift, NO_LIMIT } from './lift.ts';
import { liftAll, stationLimits } from './limits.ts';
import type { Limit, Way } from './types.ts';

/** Hours of customers and fill points that alone keep the job out: wider by what the placed day shows, and placed again. */
export function hourWays(question: Question): readonly Way[] {
  const { facts, job, rig } = question;
  const { problem } = facts;
  const own = lift(problem, rig, { kind: 'customer-hours', job }, NO_LIMIT);
  const stations = stationLimits(problem);
  const open = {
    ...problem,
    jobs: problem.jobs.map((each, index) => (index === job ? each : { ...each, ...ALL_DAY })),
  };
  return [
    ...found(question, own, (route, insertion) => customers(question, insertion, route)),
    ...found(question, open, (route, insertion) => customers(question, insertion, route)),
    ...(stations.length === 0 ? [] : found(question, liftAll(problem, rig, stations), atStations(problem))),
  ];
}

const ALL_DAY = { openMs: 0, closeMs: 86_400_000 } as const;
type Cause = { readonly limit: Limit; readonly broken: Broken };

/** The first insertion at which the hours of exactly one are in the way. */
function found(
  { facts, trials, job, rig, insertions }: Question,
  lifted: Problem,
  causesOf: (route: RouteOutcome, insertion: Insertion) => readonly Cause[],
): readonly Way[] {
  for (const insertion of insertions) {
    const route = trials.seems(lifted, job, insertion) ? trials.place(lifted, job, insertion) : null;
    const causes = route === null ? [] : causesOf(route, insertion);
    const [cause] = causes;
    if (cause === undefined || causes.length > 1) continue;
    const { limit, broken } = cause;
    const wider = lift(facts.problem, rig, limit, broken.outsideMs, broken.hours);
    if (trials.place(wider, job, insertion) === null) continue;
    const { slot, position, mode } = insertion;
    return [{ limit, amount: broken.outsideMs, ...broken.hours, slot, position, mode }];
  }
  return [];
}

function customers({ facts, job }: Question, insertion: Insertion, route: RouteOutcome): readonly Cause[] {
  const numbers: number[] = visitsOf(facts, insertion.slot).map((visit) => visit.job);
  numbers.splice(insertion.position, 0, job);
  const hours = numbers.map((number) => {
    const { openMs = 0, closeMs = 0 } = facts.problem.jobs[number] ?? {};
    return { fromMs: openMs, toMs: closeMs };
  });
  return brokenVisits(route, hours).map((broken) => ({
    limit: { kind: 'customer-hours', job: numbers[broken.subject] ?? job },
    broken,
  }));
}

function atStations(problem: Problem): (route: RouteOutcome) => readonly Cause[] {
  return (route) =>
    brokenStations(problem, route).map((broken) => ({
      limit: { kind: 'station-hours', station: broken.subject },
      broken,
    }));
}
