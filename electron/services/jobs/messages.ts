import type { AppError, Progress, Result } from '../../../core/base/index.ts';
import type { Book, Property } from '../../../core/book/index.ts';
import type { BoardQuestion, BoardReply, PassDrawings } from '../../../core/contract/index.ts';
import type { KeptFigures, PassHead, PassOptions } from '../../../core/passes/index.ts';
import type { GoTable } from '../../../core/plan/board/index.ts';
import type { DoneWork, Outage, RestOfDay } from '../../../core/plan/problem/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import type { Keeping } from '../../../core/plan/search/index.ts';
import type { PlannedDays } from '../../../core/round/programme/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';
import type { Seat } from './exchange.ts';

/** A plan to begin with, and what of it has to stay. */
export type PlanBase = Keeping & { readonly plan: Plan };

/** What is to be planned, and how. */
export type PlanWish = {
  readonly book: Book;
  readonly roundId: string;
  readonly dates: readonly string[] | null;
  /** The day on which is asked, and the days of other rounds' plans; absent: neither is asked. */
  readonly today?: string;
  readonly plannedDays?: PlannedDays;
  readonly seed: number;
  readonly seconds: number | null;
  readonly iterations: number | null;
  /** Price on days of unlike length, dollars for an hour above the mean; 0 unless told. */
  readonly evenUsdPerHour?: number;
  /** The rest of a day under way; absent: whole days. */
  readonly rest?: RestOfDay;
  /** Threads that search, each with a seed of its own, and tell each other of their best now and then; 1 unless told. */
  readonly workers?: number;
  /** Absent: the round is planned from nothing. */
  readonly base?: PlanBase | null;
  /** Rigs and machines that are out on single dates; none unless told. */
  readonly outages?: readonly Outage[];
  /** Drive times by road; absent: travel is the estimate. */
  readonly roads?: DriveTable | undefined;
  /** What was done before and is left out; nothing unless told. */
  readonly done?: readonly DoneWork[];
  /** Figures of passes that are known already. */
  readonly figures?: KeptFigures;
};

/** A round of which the work is to be reckoned. */
export type ReckonWish = {
  readonly book: Book;
  readonly roundId: string;
  /** Days to ask about, one choice after the other until one has the fingerprint; null for all days of the round. */
  readonly dates: readonly (readonly string[] | null)[];
  readonly evenUsdPerHour?: number;
  readonly outages?: readonly Outage[];
  readonly roads?: DriveTable | undefined;
  readonly done?: readonly DoneWork[];
  /** Fingerprint to compare with; null where the figures alone are wanted. */
  readonly hash: string | null;
};

/** What the worker is started with to reckon alone. */
export type ReckonOrder = {
  readonly reckon: ReckonWish;
  readonly figures: KeptFigures;
  readonly stopFlag: SharedArrayBuffer;
};

/** What it then tells. The last message is 'reckoned'; its figures are those that were not known before. */
export type ReckonMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'stopping' }
  | { readonly kind: 'reckoned'; readonly result: Result<{ readonly fits: boolean }>; readonly figures: KeptFigures };

/** Passes that are to be laid over a zone. */
export type DrawWish = {
  readonly property: Property;
  readonly zoneId: string;
  readonly head: PassHead;
  readonly options: PassOptions;
  readonly slopeDeg: number;
  readonly where: string;
};

/** What the worker is started with to lay passes alone, and the one thing that it then tells. */
export type DrawOrder = { readonly draw: readonly DrawWish[]; readonly stopFlag: SharedArrayBuffer };
export type DrawMessage = PassDrawings;

/** What the worker is started with to reckon the passes over the only property of a book, and the one thing that it then tells. */
export type PassesOrder = {
  readonly passesOf: Book;
  readonly figures: KeptFigures;
  readonly stopFlag: SharedArrayBuffer;
};
export type PassesMessage = { readonly figures: KeptFigures };

/** What the worker is started with to stay and answer questions about plans of one round. */
export type BoardOrder = {
  readonly board: {
    readonly book: Book;
    readonly roundId: string;
    readonly today: string;
    readonly plannedDays: PlannedDays;
    readonly roads: DriveTable | undefined;
  };
  readonly figures: KeptFigures;
  readonly stopFlag: SharedArrayBuffer;
};
/** A question, and the plan that it is about by its stamp; the plan itself the first time. */
export type BoardAsked = {
  readonly id: number;
  readonly stamp: string;
  readonly plan: Plan | null;
  readonly question: BoardQuestion;
};
export type BoardTold = { readonly id: number; readonly result: Result<BoardReply> };

/** What the worker is started with to tell who can go to which lawn, and the one thing that it then tells. */
export type FitOrder = {
  readonly fit: { readonly book: Book; readonly roundId: string; readonly treatmentId: string };
  readonly figures: KeptFigures;
  readonly stopFlag: SharedArrayBuffer;
};
export type FitMessage = { readonly table: GoTable | null };

/** What the worker is started with. */
export type PlanOrder = {
  readonly wish: PlanWish;
  /** One 32-bit number that both sides see: 1 asks the search to end and give the best it has. */
  readonly stopFlag: SharedArrayBuffer;
  /** Its place among several threads; null where it is alone. */
  readonly seat: Seat | null;
};

/** What the worker tells. The last message is 'done' or 'failed'. */
export type PlanMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  /** The problem stands; from now on there is something that a cancel would lose. */
  | { readonly kind: 'searching' }
  /** It has seen that it was cancelled; what it has so far follows. */
  | { readonly kind: 'stopping' }
  | { readonly kind: 'done'; readonly plan: Plan; readonly cancelled: boolean }
  | { readonly kind: 'failed'; readonly error: AppError };
