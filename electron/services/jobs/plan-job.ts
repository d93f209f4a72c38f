import { Worker } from 'node:worker_threads';
import type { Progress, Result } from '../../../core/base/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { layTable, leaveSeat, portsOf } from './exchange.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { PlanMessage, PlanOrder, PlanWish } from './messages.ts';

export type PlanOutcome = { readonly plan: Plan; readonly cancelled: boolean };

export type PlanJob = {
  /** Asks the search to end; it answers with its best plan. A search that does not answer in time is ended by force. */
  readonly cancel: () => void;
  /** Settles once, never rejects. */
  readonly outcome: Promise<Result<PlanOutcome>>;
};

/**
 * How long a cancelled search may take to give its best plan before its thread is ended, milliseconds. It takes a few tens by
 * itself; on a busy machine the plan still has to be written out, and it would be a pity to lose it.
 */
const PATIENCE_MS = 15_000;

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
  patienceMs: number = PATIENCE_MS,
): PlanJob {
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const seats = layTable(Math.max(1, wish.workers ?? 1));
  const threads = seats.map((seat, index) => {
    const own = { ...wish, seed: wish.seed + index * SEED_STRIDE };
    const order = { wish: own, stopFlag, seat: seats.length === 1 ? null : seat };
    return startThread(workerFile, order, index === 0 ? onProgress : null);
  });
  let killer: NodeJS.Timeout | null = null;
  const outcome = Promise.all(threads.map((thread) => thread.outcome)).then((results) => {
    if (killer !== null) clearTimeout(killer);
    return bestOf(results);
  });
  const cancel = (): void => {
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    killer ??= setTimeout(() => {
      for (const thread of threads) thread.end();
    }, patienceMs);
  };
  return { cancel, outcome };
}

type PlanThread = {
  /** Ends the thread by force. */
  readonly end: () => void;
  /** Settles once, never rejects. */
  readonly outcome: Promise<Result<PlanOutcome>>;
};

function startThread(
  workerFile: string,
  order: PlanOrder,
  onProgress: ((progress: Progress) => void) | null,
): PlanThread {
  const { seat } = order;
  const worker = new Worker(workerFile, { workerData: order, transferList: seat === null ? [] : [...portsOf(seat)] });
  let killed = false;
  const outcome = new Promise<Result<PlanOutcome>>((settle) => {
    const finish = (result: Result<PlanOutcome>): void => {
      settle(result);
      if (seat !== null) leaveSeat(seat);
      void worker.terminate();
    };
    worker.on('message', (message: PlanMessage) => {
      if (message.kind === 'progress') onProgress?.(message.progress);
      else if (message.kind === 'failed') finish({ ok: false, error: message.error });
      else if (message.cancelled && message.plan.days.length === 0) finish(gaveNoPlan());
      else finish({ ok: true, value: { plan: message.plan, cancelled: message.cancelled } });
    });
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(killed ? gaveNoPlan() : { ok: false, error: workerFault('its thread ended') }));
  });
  const end = (): void => {
    killed = true;
    void worker.terminate();
  };
  return { end, outcome };
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
