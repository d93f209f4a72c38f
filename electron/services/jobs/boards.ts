import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { ok, type Result } from '../../../core/base/index.ts';
import type { BoardQuestion, BoardReply } from '../../../core/contract/index.ts';
import { keptFigures } from '../../../core/passes/index.ts';
import { applyChange } from '../../../core/plan/board/index.ts';
import { restName } from '../../../core/plan/live/index.ts';
import { type Plan, plannedDays } from '../../../core/plan/result/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';
import type { Session } from '../library/index.ts';
import type { Log } from '../log/index.ts';
import { bookOfRound } from './book-of-round.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { BoardAsked, BoardOrder, BoardTold } from './messages.ts';
import { Shelf } from './shelf.ts';

export type BoardRequest = {
  readonly roundId: string;
  readonly today: string;
  /** Stands for a plan; the plan itself where the board may not know it. */
  readonly stamp: string;
  readonly plan: Plan | null;
  readonly question: BoardQuestion;
};

/** Threads that hold the problem of a round and answer questions about its plans at once. */
export type Boards = {
  readonly ask: (session: Session, request: BoardRequest) => Promise<Result<BoardReply>>;
  /** Keeps the plan of a stamp with the book: an earlier one that somebody went back to. */
  readonly keep: (session: Session, roundId: string, stamp: string) => Promise<Result<{ readonly known: boolean }>>;
  /** Settles when what was moved is stored. */
  readonly settled: (session: Session) => Promise<void>;
  readonly end: (which: (session: Session) => boolean) => Promise<void>;
};

/** A board that nobody has asked for so long is put away, ms. */
const IDLE_MS = 15 * 60_000;
/**
 * How long a question may take, ms: one that builds the problem of thousands of lawns first takes some ten seconds, and whoever waits
 * for longer than this waits for a thread that is stuck.
 */
const PATIENCE_MS = 120_000;

/** The name by which a plan is kept with the book. */
function keptAs({ roundId, rest }: Plan): string {
  return rest === undefined ? roundId : restName(roundId, rest.date);
}

type BoardTools = {
  readonly workerFile: string;
  readonly drivesOf: (session: Session) => Promise<DriveTable | undefined>;
  readonly now: () => Date;
  readonly log: Log;
  /** How long a question may take before its thread is ended, ms; minutes unless told. */
  readonly patienceMs?: number;
};

export function createBoards({ workerFile, drivesOf, now, log, patienceMs = PATIENCE_MS }: BoardTools): Boards {
  const open = new Map<string, OpenBoard>();
  const keyOf = (session: Session, roundId: string): string => JSON.stringify([session.session, roundId]);
  const boardOf = (session: Session, roundId: string, today: string, roads: DriveTable | undefined): OpenBoard => {
    const key = keyOf(session, roundId);
    const known = open.get(key);
    if (known?.isGoodFor(today, roads) === true) return known;
    known?.end();
    const board = new OpenBoard(workerFile, {
      ...{ session, roundId, today, roads, patienceMs },
      plans: known?.plans ?? new Shelf(),
    });
    open.set(key, board);
    return board;
  };
  const store = (board: OpenBoard, plan: Plan): Promise<Result<unknown>> => {
    // The answer goes out first: writing down a long round takes longer than a move.
    const kept = setImmediate().then(() =>
      board.session.entry.keepPlan({ roundId: keptAs(plan), savedAt: now().toISOString(), plan }),
    );
    board.storing = kept.then((result) => {
      // The plan of a read-only book is still shown.
      if (!result.ok && result.error.code !== 'book-read-only')
        log('warn', 'board', 'not stored', { code: result.error.code });
    });
    return kept;
  };
  return {
    ask: async (session, request) => {
      const board = boardOf(session, request.roundId, request.today, await drivesOf(session));
      const reply = await board.ask(request);
      const { question, stamp } = request;
      const plan = board.plans.get(stamp);
      if (question.kind !== 'move' || !reply.ok || reply.value.kind !== 'moved' || plan === undefined) return reply;
      const after = applyChange(plan, reply.value.change);
      board.know(question.newStamp, after);
      void store(board, after);
      return reply;
    },
    keep: async (session, roundId, stamp) => {
      const board = open.get(keyOf(session, roundId));
      const plan = board?.plans.get(stamp);
      if (board === undefined || plan === undefined) return ok({ known: false });
      const kept = await store(board, plan);
      return kept.ok ? ok({ known: true }) : kept;
    },
    settled: async (session) => {
      await Promise.all([...open.values()].map((board) => (board.session === session ? board.storing : null)));
    },
    end: async (which) => {
      const ending = [...open].filter(([, board]) => which(board.session));
      await Promise.all(ending.map(([, board]) => board.storing));
      for (const [key, board] of ending) {
        board.end();
        open.delete(key);
      }
    },
  };
}

type Standing = {
  readonly session: Session;
  readonly roundId: string;
  readonly today: string;
  readonly roads: DriveTable | undefined;
  readonly plans: Shelf<Plan>;
  readonly patienceMs: number;
};

class OpenBoard {
  readonly session: Session;
  readonly roundId: string;
  private readonly today: string;
  private readonly roads: DriveTable | undefined;
  private readonly revision: number;
  readonly plans: Shelf<Plan>;
  storing: Promise<void> = Promise.resolve();
  private ended = false;
  private readonly worker: Worker;
  /** Stamps of plans that the thread knows. */
  private readonly told = new Set<string>();
  private readonly waiting = new Map<number, (result: Result<BoardReply>) => void>();
  private nextId = 1;
  private idle: NodeJS.Timeout | undefined;

  private readonly patienceMs: number;

  constructor(workerFile: string, { session, roundId, today, roads, plans, patienceMs }: Standing) {
    this.patienceMs = patienceMs;
    this.session = session;
    this.roundId = roundId;
    this.today = today;
    this.roads = roads;
    this.revision = session.entry.revision();
    this.plans = plans;
    const order: BoardOrder = {
      board: {
        book: bookOfRound(session.entry.book(), roundId),
        roundId,
        today,
        // As for planning: what is kept beside the plan of a round does not count.
        plannedDays: plannedDays(
          session.entry.plans().flatMap((each) => (each.roundId === each.plan.roundId ? [each.plan] : [])),
        ),
        roads,
      },
      figures: keptFigures(),
      stopFlag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
    };
    this.worker = new Worker(workerFile, { workerData: order });
    this.worker.on('message', ({ id, result }: BoardTold) => {
      this.waiting.get(id)?.(result);
      this.waiting.delete(id);
    });
    this.worker.on('error', (error) => this.giveUp({ ok: false, error: workerFault(error.message) }));
    this.worker.on('exit', () => this.giveUp(gaveNoPlan()));
  }

  /** Whether its problem is still that of the book, asked on that day, with these drive times. */
  isGoodFor(today: string, roads: DriveTable | undefined): boolean {
    const isSameBook = this.revision === this.session.entry.revision();
    return !this.ended && this.today === today && this.roads === roads && isSameBook;
  }

  ask({ stamp, plan, question }: BoardRequest): Promise<Result<BoardReply>> {
    if (plan !== null) this.plans.put(stamp, plan);
    const known = this.plans.get(stamp);
    if (known === undefined) return Promise.resolve(ok({ kind: 'plan-unknown' }));
    const id = this.nextId;
    this.nextId += 1;
    const asked: BoardAsked = { id, stamp, plan: this.told.has(stamp) ? null : known, question };
    this.told.add(stamp);
    clearTimeout(this.idle);
    this.idle = setTimeout(() => this.end(), IDLE_MS).unref();
    return new Promise((settle) => {
      const stuck = setTimeout(() => {
        this.giveUp({ ok: false, error: workerFault('its thread does not answer') });
        this.end();
      }, this.patienceMs).unref();
      this.waiting.set(id, (result) => {
        clearTimeout(stuck);
        settle(result);
      });
      this.worker.postMessage(asked);
    });
  }

  /** A plan that the thread has made itself. */
  know(stamp: string, plan: Plan): void {
    this.plans.put(stamp, plan);
    this.told.add(stamp);
  }

  end(): void {
    this.ended = true;
    clearTimeout(this.idle);
    void this.worker.terminate();
  }

  private giveUp(result: Result<BoardReply>): void {
    this.ended = true;
    clearTimeout(this.idle);
    for (const settle of this.waiting.values()) settle(result);
    this.waiting.clear();
  }
}
