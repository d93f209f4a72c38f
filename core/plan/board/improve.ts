import type { Book } from '../../book/index.ts';
import type { Problem } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import { type Plan, PlanWriter } from '../result/index.ts';
import { withoutMachinesOut } from './outages.ts';
import { TAKEN_OUT } from './unplaced.ts';

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
  const reasonsOf = new Map(
    taken.map((each) => [JSON.stringify([each.zoneId, each.treatmentId, each.step, each.propertyId]), each.reasons]),
  );
  const held = new Set(taken.map((each) => writer.jobWith(each)));
  const jobs = problem.jobs.map((job, number) =>
    held.has(number) ? { ...job, dayAllowed: new Uint8Array(job.dayAllowed.length) } : job,
  );
  const reduced = withoutMachinesOut({ ...problem, jobs });
  const told = (of: Plan): Plan => ({
    ...of,
    unplaced: of.unplaced.map((each) => {
      const reasons = reasonsOf.get(JSON.stringify([each.zoneId, each.treatmentId, each.step, each.propertyId]));
      return reasons === undefined ? each : { ...each, reasons };
    }),
  });
  return { problem: reduced.problem, back: reduced.back, told };
}
