import type { Job, Op, ProblemRig } from '../problem/index.ts';
import type { PlanActivity } from '../result/index.ts';
import { type Lookup, methodKey, taskKey } from './lookup.ts';
import { AMOUNT_SLACK, marksOf, msOf, TIME_SLACK_MS } from './tolerance.ts';
import { drawnParts, serviceBetween } from './vessels.ts';

type Treat = Extract<PlanActivity, { kind: 'treat' }>;

/** What a visit of the plan does, matched with the problem's way of doing it. */
export type MatchedVisit = {
  readonly propertyId: string;
  /** Job numbers it works on; more than one only where no single mode fits. */
  readonly jobs: readonly number[];
  readonly place: number;
  readonly openMs: number;
  readonly closeMs: number;
  readonly beforeMs: number;
  readonly afterMs: number;
  /** The op of each treat activity, by the activity's number; null where the rig has none for it. */
  readonly ops: ReadonlyMap<number, Op | null>;
  /** False where every op exists but no mode does them in this order. */
  readonly orderKnown: boolean;
};

type Candidate = { readonly job: number; readonly mode: Job['modes'][number][number]; readonly ops: readonly Op[] };

/**
 * Finds the job and mode that a visit carries out: the treats from a set-up to its pack-up have to be, in order, ops of one mode.
 * A visit may do a part of a mode only; what is missing then has to be found elsewhere in the plan.
 *
 * @param start number of the set-up activity
 */
export function matchVisit(
  lookup: Lookup,
  rig: number,
  activities: readonly PlanActivity[],
  start: number,
): MatchedVisit | null {
  const setUp = activities[start];
  if (setUp?.kind !== 'set-up') return null;
  const jobs = lookup.jobsOf.get(setUp.propertyId) ?? [];
  const firstJob = lookup.problem.jobs[jobs[0] ?? -1];
  if (firstJob === undefined) return null;
  const treats = treatsFrom(activities, start);
  const runs = runsOf(treats);
  const packUp = activities.slice(start + 1).find((each) => each.kind === 'pack-up' || each.kind === 'set-up');
  const spent = { beforeMs: spanMs(setUp), afterMs: packUp?.kind === 'pack-up' ? spanMs(packUp) : 0 };
  const best = bestCandidate(lookup, rig, jobs, runs, spent);
  if (best === null) return looseMatch(lookup, rig, setUp.propertyId, jobs, treats, firstJob);
  const job = lookup.problem.jobs[best.job] ?? firstJob;
  return {
    ...frameOf(setUp.propertyId, [best.job], job),
    beforeMs: best.mode.beforeMs,
    afterMs: best.mode.afterMs,
    ops: new Map(runs.flatMap((run, at) => run.indexes.map((index) => [index, best.ops[at] ?? null] as const))),
    orderKnown: true,
  };
}

function frameOf(propertyId: string, jobs: readonly number[], job: Job) {
  return { propertyId, jobs, place: job.place, openMs: job.openMs, closeMs: job.closeMs };
}

function treatsFrom(activities: readonly PlanActivity[], start: number): (readonly [number, Treat])[] {
  const treats: (readonly [number, Treat])[] = [];
  for (let index = start + 1; index < activities.length; index += 1) {
    const activity = activities[index];
    if (activity === undefined || activity.kind === 'set-up' || activity.kind === 'pack-up') break;
    if (activity.kind === 'treat') treats.push([index, activity]);
  }
  return treats;
}

/** Treats of one task by one method that follow each other are one run. */
type Run = {
  readonly task: string;
  readonly method: string;
  readonly trims: boolean;
  readonly treats: Treat[];
  readonly indexes: number[];
};

function runsOf(treats: readonly (readonly [number, Treat])[]): Run[] {
  const runs: Run[] = [];
  for (const [index, treat] of treats) {
    const task = taskKey(treat);
    const method = methodKey(treat.method);
    const trims = treat.handTrim === true;
    const last = runs.at(-1);
    if (last?.task === task && last.method === method && last.trims === trims) {
      last.treats.push(treat);
      last.indexes.push(index);
    } else runs.push({ task, method, trims, treats: [treat], indexes: [index] });
  }
  return runs;
}

type Frame = { readonly beforeMs: number; readonly afterMs: number };

/** Several modes may do the same tasks by the same methods: the one whose draws and times are those of the plan. */
function bestCandidate(
  lookup: Lookup,
  rig: number,
  jobs: readonly number[],
  runs: readonly Run[],
  spent: Frame,
): Candidate | null {
  const rigModel = lookup.problem.rigs[rig];
  if (rigModel === undefined) return null;
  let best: Candidate | null = null;
  let bestRank = Number.POSITIVE_INFINITY;
  for (const job of jobs) {
    for (const mode of lookup.problem.jobs[job]?.modes[rig] ?? []) {
      const ops = inOrder(lookup, mode.ops, runs);
      if (ops === null) continue;
      const strangers = runs.filter((run, index) => !agrees(rigModel, ops[index], run)).length;
      // Fewest strange runs first, then the mode that leaves least undone, then the one with most time for its frame.
      const rank = strangers * 1e18 + (mode.ops.length - ops.length) * 1e12 + shortfall(mode, spent);
      if (rank < bestRank) [best, bestRank] = [{ job, mode, ops }, rank];
    }
  }
  return best;
}

/** The ops of a mode that the runs are, in order; null where they are not. */
function inOrder(lookup: Lookup, modeOps: readonly Op[], runs: readonly Run[]): Op[] | null {
  const found: Op[] = [];
  let next = 0;
  for (const run of runs) {
    while (next < modeOps.length && !isRun(lookup, modeOps[next], run)) next += 1;
    const op = modeOps[next];
    if (op === undefined) return null;
    found.push(op);
    next += 1;
  }
  return found;
}

function isRun(lookup: Lookup, op: Op | undefined, run: Run): boolean {
  if (op === undefined || (op.groundBefore !== undefined) !== run.trims) return false;
  return lookup.taskOf.get(run.task) === op.task && methodKey(op.method) === run.method;
}

/** Time by which set-up and pack-up are shorter than a mode asks for. */
function shortfall(mode: Frame, spent: Frame): number {
  return Math.max(0, mode.beforeMs - spent.beforeMs) + Math.max(0, mode.afterMs - spent.afterMs);
}

function spanMs(activity: PlanActivity): number {
  return msOf(activity.endSec) - msOf(activity.startSec);
}

/** Whether an op draws what every treat of a run states, in no more time than that takes. */
function agrees(rig: ProblemRig, op: Op | undefined, run: Run): boolean {
  return op !== undefined && run.treats.every((treat) => drawsAgree(rig, op, treat) && timeAgrees(op, treat));
}

function drawsAgree(rig: ProblemRig, op: Op, treat: Treat): boolean {
  const [from, to] = marksOf(treat);
  return rig.compartments.every((vessel, compartment) => {
    const stated = treat.draws.filter((draw) => draw.compartmentId === vessel.id);
    const amount = stated.reduce((sum, draw) => sum + (vessel.kind === 'tank' ? draw.volumeGal : draw.weightLb), 0);
    const draws = op.draws.filter((draw) => draw.compartment === compartment);
    const due = draws.reduce((sum, draw) => sum + drawnParts(op, draw.parts, from, to), 0) / 100;
    return Math.abs(amount - due) <= AMOUNT_SLACK;
  });
}

function timeAgrees(op: Op, treat: Treat): boolean {
  return spanMs(treat) >= serviceBetween(op, ...marksOf(treat)) - TIME_SLACK_MS;
}

/** Where no mode fits: each treat by whatever op the rig has for it, the least set-up and pack-up of all its modes. */
function looseMatch(
  lookup: Lookup,
  rig: number,
  propertyId: string,
  jobs: readonly number[],
  treats: readonly (readonly [number, Treat])[],
  firstJob: Job,
): MatchedVisit {
  const modes = jobs.flatMap((job) => lookup.problem.jobs[job]?.modes[rig] ?? []);
  const ops = new Map<number, Op | null>();
  for (const [index, treat] of treats) {
    const trims = treat.handTrim === true;
    const run = { task: taskKey(treat), method: methodKey(treat.method), trims, treats: [treat], indexes: [index] };
    ops.set(index, modes.flatMap((mode) => mode.ops).find((op) => isRun(lookup, op, run)) ?? null);
  }
  return {
    ...frameOf(propertyId, jobs, firstJob),
    beforeMs: modes.length === 0 ? 0 : Math.min(...modes.map((mode) => mode.beforeMs)),
    afterMs: modes.length === 0 ? 0 : Math.min(...modes.map((mode) => mode.afterMs)),
    ops,
    orderKnown: [...ops.values()].some((op) => op === null),
  };
}
