import type { Job, Mode, Op, Problem, ProblemRig, RouteSlot, Task } from '../problem/index.ts';
import type { RouteOutcome, Visit } from '../refills/index.ts';

/** A route with the records that its numbers stand for. */
export type RouteView = {
  readonly problem: Problem;
  readonly route: RouteOutcome;
  readonly slot: RouteSlot;
  readonly rig: ProblemRig;
  readonly visit: (index: number) => VisitView;
  readonly op: (visit: number, op: number) => OpView;
};

export type VisitView = { readonly job: Job; readonly mode: Mode };
export type OpView = { readonly op: Op; readonly task: Task };

export function viewRoute(problem: Problem, route: RouteOutcome): RouteView {
  const slot = must(problem.slots[route.slot], 'slot');
  const rig = must(problem.rigs[slot.rig], 'rig');
  const visit = (index: number): VisitView => viewVisit(problem, slot.rig, must(route.visits[index], 'visit'));
  return {
    problem,
    route,
    slot,
    rig,
    visit,
    op: (visitIndex, opIndex) => {
      const op = must(visit(visitIndex).mode.ops[opIndex], 'op');
      return { op, task: must(problem.tasks[op.task], 'task') };
    },
  };
}

function viewVisit(problem: Problem, rig: number, visit: Visit): VisitView {
  const job = must(problem.jobs[visit.job], 'job');
  return { job, mode: must(job.modes[rig]?.[visit.mode], 'mode') };
}

/** A number that points outside its table is a bug of the search, not of the user. */
export function must<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new RangeError(`no such ${what}`);
  return value;
}

/** Who does an op: 1, or 2 for the second person beside the first. */
export function personOf(op: Op): 1 | 2 {
  return op.second ? 2 : 1;
}

/** What a hand tool does after a machine. */
export function isHandTrim(op: Op): boolean {
  return op.groundBefore !== undefined;
}
