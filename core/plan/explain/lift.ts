import { MS_PER_DAY } from '../../units/index.ts';
import type { Job, Problem, ProblemRig, Station } from '../problem/index.ts';
import type { Limit } from './types.ts';

/** More than any day needs, and far from where whole numbers end. */
export const NO_LIMIT = 1_000_000_000_000;
/** A supply that a limit is lifted by flows as water from a slow tap: 1 gallon in 60 seconds. */
const SLOW_MS_PER_PART = 600;

/** Hours instead of those of the limit; for the limits that are hours. */
export type Hours = { readonly fromMs: number; readonly toMs: number };

/**
 * The problem with one limit moved for one rig; everything else stays.
 *
 * @param amount as in `Way`; NO_LIMIT takes the limit away
 * @param hours hours that count besides those the limit has; whole days and nights without
 */
export function lift(problem: Problem, rig: number, limit: Limit, amount: number, hours?: Hours): Problem {
  switch (limit.kind) {
    case 'time':
      return amount === NO_LIMIT
        ? endless(onRig(problem, rig, () => ({ overtimeMs: NO_LIMIT })))
        : onRig(problem, rig, (each) => ({ overtimeMs: each.overtimeMs + amount }));
    case 'payload':
      return onRig(problem, rig, (each) => ({ cargoLimit: each.cargoLimit + amount }));
    case 'bag-places':
      return onRig(problem, rig, (each) => ({ bagPlaces: each.bagPlaces + Math.min(amount, 100_000) }));
    case 'nurse-tank':
      return onRig(problem, rig, (each) => ({ nurseParts: each.nurseParts + Math.min(amount, 100_000_000) }));
    case 'compartment':
      return onRig(problem, rig, (each) => ({ compartments: larger(each, limit.compartment, amount) }));
    case 'customer-hours':
      return onJob(problem, limit.job, (each) => wider(each, hours));
    case 'day':
      return problem;
    case 'station-hours':
      return onStation(problem, limit.station, (each) => wider(each, hours));
    case 'supply':
      return supplied(problem, rig, limit.stock);
  }
}

function onRig(problem: Problem, rig: number, change: (rig: ProblemRig) => Partial<ProblemRig>): Problem {
  return { ...problem, rigs: problem.rigs.map((each, at) => (at === rig ? { ...each, ...change(each) } : each)) };
}

function onJob(problem: Problem, job: number, change: (job: Job) => Partial<Job>): Problem {
  return { ...problem, jobs: problem.jobs.map((each, at) => (at === job ? { ...each, ...change(each) } : each)) };
}

function onStation(problem: Problem, station: number, change: (station: Station) => Partial<Station>): Problem {
  const stations = problem.stations.map((each, at) => (at === station ? { ...each, ...change(each) } : each));
  return { ...problem, stations };
}

/** Whoever is open all day stays open after midnight, so that a day without end has no other end. */
function endless(problem: Problem): Problem {
  const open = <T extends { readonly closeMs: number }>(each: T): T =>
    each.closeMs >= MS_PER_DAY ? { ...each, closeMs: NO_LIMIT } : each;
  return { ...problem, jobs: problem.jobs.map(open), stations: problem.stations.map(open) };
}

function wider(each: { readonly openMs: number; readonly closeMs: number }, hours: Hours | undefined) {
  const { fromMs, toMs } = hours ?? { fromMs: 0, toMs: MS_PER_DAY };
  return { openMs: Math.min(each.openMs, fromMs), closeMs: Math.max(each.closeMs, toMs) };
}

function larger(rig: ProblemRig, compartment: number, amount: number): ProblemRig['compartments'] {
  const more = Math.min(amount, 100_000_000);
  return rig.compartments.map((each, at) =>
    at === compartment ? { ...each, capacityParts: each.capacityParts + more } : each,
  );
}

function supplied(problem: Problem, rig: number, stock: number): Problem {
  return onStation(problem, problem.rigs[rig]?.home ?? 0, (each) => ({
    msPerPart: each.msPerPart.map((ms, at) => (at === stock && ms < 0 ? SLOW_MS_PER_PART : ms)),
  }));
}
