import { type Insertion, type PlanFacts, visitsOf } from './insertions.ts';
import { lift, NO_LIMIT } from './lift.ts';
import { scaleOf } from './limits.ts';
import { smallest } from './smallest.ts';
import type { Trials } from './trials.ts';
import type { Limit, Way } from './types.ts';

/** One job, one rig, and the insertions at which a limit may be what keeps it out. */
export type Question = {
  readonly facts: PlanFacts;
  readonly trials: Trials;
  readonly job: number;
  readonly rig: number;
  readonly insertions: readonly Insertion[];
};

/** Limits of what is carried that alone keep the job out, each with the least that is missing. */
export function carriedWays(question: Question, limits: readonly Limit[]): readonly Way[] {
  return limits.flatMap((limit) => {
    const way = firstWay(question, limit);
    return way === null ? [] : [way];
  });
}

/** By the first insertion that the limit lets in. */
function firstWay({ facts, trials, job, rig, insertions }: Question, limit: Limit): Way | null {
  const { problem } = facts;
  const away = lift(problem, rig, limit, NO_LIMIT);
  for (const insertion of insertions) {
    if (!trials.seems(away, job, insertion) || trials.place(away, job, insertion) === null) continue;
    const { slot, position, mode } = insertion;
    const visits = [...visitsOf(facts, slot), { job, mode }];
    const { step, most } = scaleOf(problem, rig, limit, visits);
    const moved = (count: number) => lift(problem, rig, limit, count * step);
    const guess = step === 0 ? 0 : smallest(most, (count) => trials.seems(moved(count), job, insertion));
    const proved = [guess, most].find((count) => trials.place(moved(count), job, insertion) !== null);
    if (proved === undefined) continue;
    const amount = proved * step;
    return { limit, amount, fromMs: 0, toMs: 0, slot, position, mode };
  }
  return null;
}
