import { canonicalJson } from '../../base/index.ts';
import type { Mode, Problem } from '../problem/index.ts';
import type { Visit } from '../refills/index.ts';
import type { Plan, PlanStop } from '../result/index.ts';
import type { Start, StartRoute } from './start.ts';

/** What of a plan has to stay when a round is planned again. */
export type Keeping = {
  /** How many of the first stops of every day stay as they are, in their order. */
  readonly keepFirst: number;
  /** Properties that stay with their rig and day. */
  readonly pinned: 'all' | readonly string[];
};

/**
 * A plan as the start of a search: its stops as far as they are still work of the problem, on days and rigs that it still has, each in
 * the way that is most like the plan's.
 */
export function startFrom(problem: Problem, plan: Plan, { keepFirst, pinned }: Keeping): Start {
  const jobsOf = new Map<string, number[]>();
  problem.jobs.forEach(({ propertyId }, job) => {
    jobsOf.set(propertyId, [...(jobsOf.get(propertyId) ?? []), job]);
  });
  const routes: StartRoute[] = plan.days.flatMap(({ date, rigId, stops }) => {
    const slot = problem.slots.findIndex(
      (each) => problem.dates[each.day] === date && problem.rigs[each.rig]?.rigId === rigId,
    );
    const rig = problem.slots[slot]?.rig;
    if (rig === undefined) return [];
    const visits = stops.map((stop) => visitOf(problem, rig, jobsOf.get(stop.propertyId) ?? [], stop));
    // A stop that is no work of this problem any more does not count among the first.
    const kept = visits.slice(0, keepFirst).filter((each) => each !== null).length;
    return [{ slot, visits: visits.filter((each) => each !== null), keepFirst: kept }];
  });
  const named = new Set(pinned === 'all' ? jobsOf.keys() : pinned);
  const pinnedJobs = problem.jobs.flatMap(({ propertyId }, job) => (named.has(propertyId) ? [job] : []));
  return { routes, pinned: pinnedJobs };
}

/** The job that a stop does, and the mode that has most of its work done by the same methods in the same places. */
function visitOf(problem: Problem, rig: number, jobs: readonly number[], stop: PlanStop): Visit | null {
  const done = stop.tasks.map((each) => workName(each, each.method, each.person === 2, each.handTrim === true));
  let best: Visit | null = null;
  let most = -1;
  for (const job of jobs) {
    const tasks = problem.jobs[job]?.tasks.map((task) => problem.tasks[task]) ?? [];
    if (!tasks.some((task) => task !== undefined && stop.tasks.some((each) => isSame(task, each)))) continue;
    for (const [mode, each] of (problem.jobs[job]?.modes[rig] ?? []).entries()) {
      const alike = likeness(problem, each, done);
      if (alike <= most) continue;
      most = alike;
      best = { job, mode };
    }
  }
  return best;
}

type Work = { readonly zoneId: string; readonly treatmentId: string; readonly step: number };

function isSame(one: Work, other: Work): boolean {
  return one.zoneId === other.zoneId && one.treatmentId === other.treatmentId && one.step === other.step;
}

function workName({ zoneId, treatmentId, step }: Work, method: unknown, second: boolean, trims: boolean): string {
  return canonicalJson([zoneId, treatmentId, step, method, second, trims]);
}

function likeness(problem: Problem, mode: Mode, done: readonly string[]): number {
  return mode.ops.reduce((sum, op, at) => {
    const task = problem.tasks[op.task];
    const name = task === undefined ? '' : workName(task, op.method, op.second, op.groundBefore !== undefined);
    return sum + (done.includes(name) ? 2 : 0) + (done[at] === name ? 1 : 0);
  }, 0);
}
