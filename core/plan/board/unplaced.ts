import type { Problem } from '../problem/index.ts';
import { type Plan, type PlanWriter, type UnplacedTask, unplacedTask } from '../result/index.ts';
import type { Rows } from './rows.ts';

/** Code of the reason of work that somebody took out of a plan. */
export const TAKEN_OUT = 'taken-out-by-hand';

/**
 * What is in no day after a change: what was not before and is in none now, and what was taken out. Reasons that were found for days as
 * they were before say so.
 */
export function leftOutAfter(
  problem: Problem,
  plan: Plan,
  writer: PlanWriter,
  rows: Rows,
  outByHand: ReadonlySet<number>,
): readonly UnplacedTask[] {
  const dates = new Set(rows.changed().map((slot) => problem.dates[problem.slots[slot]?.day ?? -1] ?? ''));
  const still = plan.unplaced.flatMap((each) => {
    const job = writer.jobWith(each);
    if (job < 0) return [each];
    return rows.slotWith(job) >= 0 || outByHand.has(job) ? [] : [withOldReasons(each, dates)];
  });
  const taken = [...outByHand].flatMap((job) =>
    (problem.jobs[job]?.tasks ?? []).map((task) => takenOut(problem, writer, task)),
  );
  return [...still, ...taken];
}

function takenOut(problem: Problem, { names }: PlanWriter, task: number): UnplacedTask {
  const reason = { code: TAKEN_OUT, words: 'taken out by hand', ways: [] };
  const reasons = problem.rigs.map(({ rigId }) => ({ rigId, ...reason }));
  return unplacedTask(problem, names, task, reasons);
}

/** A reason that names a day which has changed since does not hold for certain any more. */
function withOldReasons(task: UnplacedTask, changed: ReadonlySet<string>): UnplacedTask {
  const reasons = task.reasons.map((reason) =>
    reason.ways.some((way) => changed.has(way.date))
      ? { ...reason, words: `before the plan was changed by hand: ${reason.words}`, ways: [] }
      : reason,
  );
  return { ...task, reasons };
}
