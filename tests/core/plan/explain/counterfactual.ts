import type { Way, WhyNot } from '../../../../core/plan/explain/index.ts';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { type Placement, placeRefills, type Solution, type Visit } from '../../../../core/plan/refills/index.ts';

/** The problem with one limit moved as a reason says, written for the tests alone. */
export function withLimitMoved(problem: Problem, { rig }: WhyNot, way: Way, amount = way.amount): Problem {
  const { limit } = way;
  const onRig = (change: (each: ProblemRig) => Partial<ProblemRig>): Problem => ({
    ...problem,
    rigs: problem.rigs.map((each, index) => (index === rig ? { ...each, ...change(each) } : each)),
  });
  if (limit.kind === 'time') return onRig((each) => ({ overtimeMs: each.overtimeMs + amount }));
  if (limit.kind === 'payload') return onRig((each) => ({ cargoLimit: each.cargoLimit + amount }));
  if (limit.kind === 'bag-places') return onRig((each) => ({ bagPlaces: each.bagPlaces + amount }));
  if (limit.kind === 'nurse-tank') return onRig((each) => ({ nurseParts: each.nurseParts + amount }));
  if (limit.kind === 'compartment') {
    const grown = (each: ProblemRig) =>
      each.compartments.map((tank, index) =>
        index === limit.compartment ? { ...tank, capacityParts: tank.capacityParts + amount } : tank,
      );
    return onRig((each) => ({ compartments: grown(each) }));
  }
  const hours = { openMs: way.fromMs, closeMs: way.toMs };
  if (limit.kind === 'customer-hours')
    return {
      ...problem,
      jobs: problem.jobs.map((each, index) => (index === limit.job ? { ...each, ...hours } : each)),
    };
  if (limit.kind === 'station-hours') {
    const stations = problem.stations.map((each, index) => (index === limit.station ? { ...each, ...hours } : each));
    return { ...problem, stations };
  }
  if (limit.kind === 'day') return problem;
  throw new RangeError(`no counterfactual for ${limit.kind}`);
}

/** The visits of the plan's day with the job where a reason says that it would go. */
export function visitsWith(solution: Solution, { job }: WhyNot, { slot, position, mode }: Way): readonly Visit[] {
  const visits = solution.routes.find((route) => route.slot === slot)?.visits ?? [];
  return [...visits.slice(0, position), { job, mode }, ...visits.slice(position)];
}

/** Places the whole day with the job in it. */
export function placeWith(problem: Problem, solution: Solution, why: WhyNot, way: Way): Placement {
  return placeRefills(problem, way.slot, visitsWith(solution, why, way));
}

/** Size of the step in which a limit is asked for; 0 where it is not counted. */
export function stepOf({ limit }: Way): number {
  if (limit.kind === 'payload') return 10_000;
  if (limit.kind === 'nurse-tank' || limit.kind === 'compartment') return 100;
  return limit.kind === 'bag-places' ? 1 : 0;
}
