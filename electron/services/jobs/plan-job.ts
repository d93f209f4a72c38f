import { Worker } from 'node:worker_threads';
import type { Progress, Result } from '../../../core/base/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { layTable, leaveSeat, portsOf } from './exchange.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { PlanMessage, PlanOrder, PlanWish } from './messages.ts';

/** The plan that a job ends with, and whether it was cut short. */
export type PlanOutcome = { readonly plan: Plan; readonly cancelled: boolean };

/** One search in threads of its own. */
export type PlanJob = {
  /**
   * Asks the job to end. Before its search has begun there is nothing to lose, and it ends at once; a search answers with its best plan,
   * and one that does not answer in time is ended by force.
   */
  readonly cancel: () => void;
  /** Settles once, never rejects. */
  readonly outcome: Promise<Result<PlanOutcome>>;
};

/**
 * How long a cancelled search may take before its thread is ended by force, milliseconds: to say that it has seen it, and from then on to
 * give its best plan. Both take tens of milliseconds by themselves; on a busy machine a large plan takes longer to be written out, and it
 * would be a pity to lose it.
 */
export type Patience = { readonly heedMs: number; readonly writeMs: number };
const PATIENCE: Patience = { heedMs: 2000, writeMs: 15_000 };

/** Between the seeds of two threads. */
const SEED_STRIDE = 104_729;

/**
 * Plans one round in a worker thread, or in as many as the wish says, each with a seed of its own: they tell each other of their best
 * routes at fixed numbers of iterations, and the best plan is the answer, the same one for the same seed, iterations and number of
 * threads. The plan names the seed of the thread that found it.
 *
 * @param workerFile the bundled plan-worker
 */
export function startPlanJob(
  workerFile: string,
  wish: PlanWish,
  onProgress: (progress: Progress) => void,
  patience: Patience = PATIENCE,
): PlanJob {
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const seats = layTable(Math.max(1, wish.workers ?? 1));
  const threads = seats.map((seat, index) => {
    const own = { ...wish, seed: wish.seed + index * SEED_STRIDE };
    const order = { wish: own, stopFlag, seat: seats.length === 1 ? null : seat };
    return startThread(workerFile, order, patience, index === 0 ? onProgress : null);
  });
  const outcome = Promise.all(threads.map((thread) => thread.outcome)).then(bestOf);
  const cancel = (): void => {
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    for (const thread of threads) thread.expectEnd();
  };
  return { cancel, outcome };
}

/**
 * Starts a job as soon as something else is ready; one that is cancelled before that never starts, and is answered at once.
 * `ready` must not reject.
 */
export function startLater<T>(ready: Promise<T>, start: (value: T) => PlanJob): PlanJob {
  let job: PlanJob | null = null;
  let giveUp: () => void = () => undefined;
  const cancelled = new Promise<null>((settle) => {
    giveUp = () => settle(null);
  });
  const begun = ready.then((value) => ({ value }));
  const outcome = Promise.race([begun, cancelled]).then((first) => {
    if (first === null) return gaveNoPlan();
    job = start(first.value);
    return job.outcome;
  });
  const cancel = (): void => {
    giveUp();
    job?.cancel();
  };
  return { cancel, outcome };
}

type PlanThread = {
  /** Ends the thread by force where it does not end by itself in time. */
  readonly expectEnd: () => void;
  /** Settles once, never rejects. */
  readonly outcome: Promise<Result<PlanOutcome>>;
};

function startThread(
  workerFile: string,
  order: PlanOrder,
  patience: Patience,
  onProgress: ((progress: Progress) => void) | null,
): PlanThread {
  const { seat } = order;
  const worker = new Worker(workerFile, { workerData: order, transferList: seat === null ? [] : [...portsOf(seat)] });
  let killed = false;
  let isSearching = false;
  let killer: NodeJS.Timeout | undefined;
  const endIn = (milliseconds: number): void => {
    clearTimeout(killer);
    killer = setTimeout(() => {
      killed = true;
      void worker.terminate();
    }, milliseconds);
  };
  let finish: (result: Result<PlanOutcome>) => void = () => undefined;
  const outcome = new Promise<Result<PlanOutcome>>((settle) => {
    finish = (result) => {
      clearTimeout(killer);
      settle(result);
      if (seat !== null) leaveSeat(seat);
      void worker.terminate();
    };
    worker.on('message', (message: PlanMessage) => {
      if (message.kind === 'progress') onProgress?.(message.progress);
      else if (message.kind === 'searching') isSearching = true;
      else if (message.kind === 'stopping') endIn(patience.writeMs);
      else if (message.kind === 'failed') finish({ ok: false, error: message.error });
      else if (message.cancelled && message.plan.days.length === 0) finish(gaveNoPlan());
      else finish({ ok: true, value: { plan: message.plan, cancelled: message.cancelled } });
    });
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(killed ? gaveNoPlan() : { ok: false, error: workerFault('its thread ended') }));
  });
  const expectEnd = (): void => {
    if (!isSearching) finish(gaveNoPlan());
    else if (killer === undefined) endIn(patience.heedMs);
  };
  return { expectEnd, outcome };
}

/** The plan that leaves out least, then the cheapest one, then that of the first thread; where there is none, the first failure. */
function bestOf(results: readonly Result<PlanOutcome>[]): Result<PlanOutcome> {
  const plans = results.flatMap((each) => (each.ok ? [each] : []));
  const [first] = plans;
  if (first === undefined) return results[0] ?? gaveNoPlan();
  return plans.reduce((best, each) => (isBetter(each.value.plan, best.value.plan) ? each : best), first);
}

function isBetter(one: Plan, other: Plan): boolean {
  if (one.unplaced.length !== other.unplaced.length) return one.unplaced.length < other.unplaced.length;
  return one.totals.costUsd < other.totals.costUsd;
}
