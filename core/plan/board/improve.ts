import type { Book } from '../../book/index.ts';
import { machinesOutOn, type Problem } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import { type Plan, type PlanDay, PlanWriter } from '../result/index.ts';
import { withoutMachinesOut } from './outages.ts';
import { TAKEN_OUT } from './unplaced.ts';

/** Code of the reason where a rig goes without a machine. */
const MACHINE_OUT = 'machine-out';

/** A problem to plan again from a plan that was changed by hand. */
export type Improving = {
  /** What the search gets: without the ways of machines that are out, and with no day for what was taken out by hand. */
  readonly problem: Problem;
  readonly back: (solution: Solution) => Solution;
  /** The plan with what was taken out by hand told as that. */
  readonly told: (plan: Plan) => Plan;
};

/** Prepares planning again from a plan: what somebody took out stays out, and what is out of order does not go. */
export function improveFrom(book: Book, problem: Problem, plan: Plan | null): Improving {
  const writer = new PlanWriter(book, problem);
  const taken = plan?.unplaced.filter((each) => each.reasons.some((reason) => reason.code === TAKEN_OUT)) ?? [];
  const reasonsOf = new Map(taken.map((each) => [taskName(each), each.reasons]));
  const held = new Set(taken.map((each) => writer.jobWith(each)));
  const jobs = problem.jobs.map((job, number) =>
    held.has(number) ? { ...job, dayAllowed: new Uint8Array(job.dayAllowed.length) } : job,
  );
  const reduced = withoutMachinesOut({ ...problem, jobs });
  const told = (of: Plan): Plan => ({
    ...of,
    days: of.days.map((day) => withOpenWays(problem, day)),
    unplaced: of.unplaced.map((each) => {
      const known = reasonsOf.get(taskName(each));
      if (known !== undefined) return { ...each, reasons: known };
      // What no rig can ever do has its own reasons.
      if (writer.jobWith(each) < 0) return each;
      return { ...each, reasons: each.reasons.map((reason) => withoutMachines(problem, writer, reason)) };
    }),
  });
  return { problem: reduced.problem, back: reduced.back, told };
}

/** A day whose stops are not told of ways that need a machine which is out. */
function withOpenWays(problem: Problem, day: PlanDay): PlanDay {
  const isOpen = ({ rigId, methods }: PlanDay['stops'][number]['otherWays'][number]): boolean => {
    const out = machinesOutOn(problem, day.date, rigId);
    return methods.every((method) => method.kind !== 'machine' || !out.has(method.machineId));
  };
  if (problem.outages === undefined) return day;
  return { ...day, stops: day.stops.map((stop) => ({ ...stop, otherWays: stop.otherWays.filter(isOpen) })) };
}

type Reason = Plan['unplaced'][number]['reasons'][number];

function taskName({ propertyId, zoneId, treatmentId, step }: Plan['unplaced'][number]): string {
  return JSON.stringify([propertyId, zoneId, treatmentId, step]);
}

/** Reasons are found with every way that a rig has; where some of them were not open to it, they would say too much. */
function withoutMachines({ outages = [] }: Problem, { names }: PlanWriter, reason: Reason): Reason {
  const here = outages.filter((each) => each.rigId === reason.rigId && each.machineId !== undefined);
  if (here.length === 0 || reason.code === 'out-of-reach') return reason;
  const out = here.map((each) => `${names.method(each.machineId ?? '')} on ${each.date}`).join(', ');
  return { ...reason, code: MACHINE_OUT, words: `goes without ${out}; no place was found with what is left`, ways: [] };
}
