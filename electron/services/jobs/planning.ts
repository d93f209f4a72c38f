import type { Progress } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { keptFigures } from '../../../core/passes/index.ts';
import type { PlanWish } from './messages.ts';
import { type PlanJob, startPlanJob } from './plan-job.ts';
import { startReckoning } from './reckoning.ts';

/**
 * Plans a round: first the passes over its lawns are reckoned, once for all threads and for whatever is planned later, then it is
 * searched for. Where no head of the book is driven by passes, the search begins at once.
 */
export function startPlanning(workerFile: string, wish: PlanWish, onProgress: (progress: Progress) => void): PlanJob {
  if (!asksForPasses(wish.book)) return startPlanJob(workerFile, wish, onProgress);
  const { book, roundId, dates } = wish;
  const reckoning = startReckoning(workerFile, { book, roundId, dates: [dates], hash: null }, onProgress);
  let search: PlanJob | null = null;
  let isCancelled = false;
  const outcome = reckoning.outcome.then((reckoned) => {
    if (!reckoned.ok) return reckoned;
    search = startPlanJob(workerFile, { ...wish, figures: keptFigures() }, onProgress);
    if (isCancelled) search.cancel();
    return search.outcome;
  });
  const cancel = (): void => {
    isCancelled = true;
    (search ?? reckoning).cancel();
  };
  return { cancel, outcome };
}

function asksForPasses(book: Book): boolean {
  return book.machines.some((machine) => machine.heads.some((head) => head.passes !== undefined));
}
