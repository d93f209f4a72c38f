import type { Op, Problem, ProblemRig } from '../problem/index.ts';
import type { PlanActivity } from '../result/index.ts';

type TreatActivity = Extract<PlanActivity, { kind: 'treat' }>;
export type PlanMethod = TreatActivity['method'];
export type TaskName = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly step: number;
};

/** Numbers of a problem's parts by the names that a plan uses for them. */
export type Lookup = {
  readonly problem: Problem;
  readonly placeOf: ReadonlyMap<string, number>;
  readonly taskOf: ReadonlyMap<string, number>;
  readonly rigOf: ReadonlyMap<string, number>;
  readonly dayOf: ReadonlyMap<string, number>;
  readonly materialOf: ReadonlyMap<string, number>;
  /** By product id; '' is water. */
  readonly stockOf: ReadonlyMap<string, number>;
  readonly stationOf: ReadonlyMap<string, number>;
  readonly jobsOf: ReadonlyMap<string, readonly number[]>;
  /** Slots as "rig/day". */
  readonly slots: ReadonlySet<string>;
};

export function lookupOf(problem: Problem): Lookup {
  const jobsOf = new Map<string, number[]>();
  problem.jobs.forEach((job, index) => {
    jobsOf.set(job.propertyId, [...(jobsOf.get(job.propertyId) ?? []), index]);
  });
  return {
    problem,
    placeOf: numbered(problem.placeIds),
    taskOf: numbered(problem.tasks.map(taskKey)),
    rigOf: numbered(problem.rigs.map((rig) => rig.rigId)),
    dayOf: numbered(problem.dates),
    materialOf: numbered(problem.materials.map((each) => each.id)),
    stockOf: numbered(problem.stocks.map((each) => each.productId)),
    stationOf: numbered(problem.stations.map((each) => each.fillPointId)),
    jobsOf,
    slots: new Set(problem.slots.map((slot) => slotKey(slot.rig, slot.day))),
  };
}

function numbered(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map(names.map((name, index) => [name, index]));
}

export function slotKey(rig: number, day: number): string {
  return `${rig}/${day}`;
}

/** One text per task; the separator is a character that JSON escapes, so that no ids run together. */
export function taskKey(task: TaskName): string {
  return JSON.stringify([task.propertyId, task.zoneId, task.treatmentId, task.step]);
}

export function methodKey(method: PlanMethod | Op['method']): string {
  return method.kind === 'machine'
    ? JSON.stringify(['machine', method.machineId, method.headId])
    : JSON.stringify(['hand', method.handMethodId]);
}

export function compartmentOf(rig: ProblemRig, id: string): number {
  return rig.compartments.findIndex((each) => each.id === id);
}

/** Travel from one place to another, ms and m; null where a place is not one of the problem's. */
export function travelBetween(
  problem: Problem,
  from: number,
  to: number,
): { readonly ms: number; readonly metres: number } | null {
  const count = problem.placeIds.length;
  if (from < 0 || to < 0) return null;
  const cell = from * count + to;
  return { ms: problem.travelMs[cell] ?? 0, metres: problem.travelM[cell] ?? 0 };
}
