import type { AppError, Progress } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import type { Keeping } from '../../../core/plan/search/index.ts';

/** A plan to begin with, and what of it has to stay. */
export type PlanBase = Keeping & { readonly plan: Plan };

/** What is to be planned, and how. */
export type PlanWish = {
  readonly book: Book;
  readonly roundId: string;
  readonly dates: readonly string[] | null;
  readonly seed: number;
  readonly seconds: number | null;
  readonly iterations: number | null;
  /** Price on days of unlike length, dollars for an hour above the mean; 0 unless told. */
  readonly evenUsdPerHour?: number;
  /** Threads that search, each with a seed of its own; 1 unless told. */
  readonly workers?: number;
  /** Absent: the round is planned from nothing. */
  readonly base?: PlanBase | null;
};

/** What the worker is started with. */
export type PlanOrder = {
  readonly wish: PlanWish;
  /** One 32-bit number that both sides see: 1 asks the search to end and give the best it has. */
  readonly stopFlag: SharedArrayBuffer;
};

/** What the worker tells. The last message is 'done' or 'failed'. */
export type PlanMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'done'; readonly plan: Plan; readonly cancelled: boolean }
  | { readonly kind: 'failed'; readonly error: AppError };
