import { availableParallelism } from 'node:os';
import type { Progress, Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { keptFigures } from '../../../core/passes/index.ts';
import type { PlanWish, ReckonWish } from './messages.ts';
import { type PlanJob, startPlanJob } from './plan-job.ts';
import { startReckoning } from './reckoning.ts';

/** Threads that reckon passes together: more of them take longer to be told of the book than they save. */
const MOST_SHARES = 4;
/** A share of fewer lawns is not worth a thread. */
const LEAST_SHARE = 10;

/**
 * Plans a round: first the passes over its lawns are reckoned, once for all threads and for whatever is planned later, then it is
 * searched for. Where no head of the book is driven by passes, the search begins at once.
 */
export function startPlanning(workerFile: string, wish: PlanWish, onProgress: (progress: Progress) => void): PlanJob {
  if (!asksForPasses(wish.book)) return startPlanJob(workerFile, wish, onProgress);
  const shares = sharesOf(wish);
  const tellOfAll = togetherOf(shares.length, onProgress);
  const reckonings = shares.map((share, index) => startReckoning(workerFile, share, tellOfAll(index)));
  let search: PlanJob | null = null;
  let isCancelled = false;
  const outcome = Promise.all(reckonings.map((each) => each.answer)).then((reckoned) => {
    const broken = reckoned.find(isBroken);
    if (broken !== undefined && !broken.ok) return broken;
    search = startPlanJob(workerFile, { ...wish, figures: keptFigures() }, onProgress);
    if (isCancelled) search.cancel();
    return search.outcome;
  });
  const cancel = (): void => {
    isCancelled = true;
    if (search !== null) search.cancel();
    else for (const each of reckonings) each.end();
  };
  return { cancel, outcome };
}

function asksForPasses(book: Book): boolean {
  return book.machines.some((machine) => machine.heads.some((head) => head.passes !== undefined));
}

/** The lawns of the round dealt out to threads, each with as much of the book as it needs. */
function sharesOf({ book, roundId, dates }: PlanWish): readonly ReckonWish[] {
  const round = book.rounds.find((each) => each.id === roundId);
  if (round === undefined) return [];
  const { propertyIds } = round;
  const lawns = propertyIds === 'all' ? book.properties : book.properties.filter(({ id }) => propertyIds.includes(id));
  const threads = Math.min(MOST_SHARES, Math.max(2, availableParallelism() - 1));
  const count = Math.max(1, Math.min(threads, Math.floor(lawns.length / LEAST_SHARE)));
  return Array.from({ length: count }, (_, number) => {
    const properties = lawns.filter((_lawn, index) => index % count === number);
    const own = { ...round, propertyIds: properties.map(({ id }) => id) };
    return { book: { ...book, properties, rounds: [own] }, roundId, dates: [dates], hash: null };
  });
}

/** What is wrong with the round the search says of the whole of it; here only a fault of a thread counts, and the wish to end. */
function isBroken(result: Result<unknown>): boolean {
  return !result.ok && (result.error.code === 'internal' || result.error.code === 'cancelled');
}

/** Tells of the progress of several threads as of one: lawns done and lawns in all of those that have said something. */
function togetherOf(threads: number, tell: (progress: Progress) => void): (index: number) => (each: Progress) => void {
  const last: (Progress | null)[] = Array.from({ length: threads }, () => null);
  return (index) => (progress) => {
    last[index] = progress;
    const told = last.filter((each) => each !== null);
    const sum = (read: (each: Progress) => number): number => told.reduce((total, each) => total + read(each), 0);
    tell({ ...progress, done: sum((each) => each.done), total: sum((each) => each.total) });
  };
}
