import { Worker } from 'node:worker_threads';
import { type AppError, err, type Progress, type Result } from '../../../core/base/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
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

/**
 * Plans one round in a worker thread.
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
  const worker = new Worker(workerFile, { workerData: { wish, stopFlag } satisfies PlanOrder });
  let killer: NodeJS.Timeout | null = null;
  const outcome = new Promise<Result<PlanOutcome>>((settle) => {
    const end = (result: Result<PlanOutcome>): void => {
      if (killer !== null) clearTimeout(killer);
      settle(result);
      void worker.terminate();
    };
    worker.on('message', (message: PlanMessage) => {
      if (message.kind === 'progress') onProgress(message.progress);
      else if (message.kind === 'failed') end({ ok: false, error: message.error });
      else if (message.cancelled && message.plan.days.length === 0) end(gaveNoPlan());
      else end({ ok: true, value: { plan: message.plan, cancelled: message.cancelled } });
    });
    worker.on('error', (error) => end({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () =>
      end(killer === null ? { ok: false, error: workerFault('its thread ended') } : gaveNoPlan()),
    );
  });
  const cancel = (): void => {
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    killer ??= setTimeout(() => void worker.terminate(), patienceMs);
  };
  return { cancel, outcome };
}

function gaveNoPlan(): Result<never> {
  return err(
    'cancelled',
    'planning',
    'Planning was cancelled before there was a plan.',
    'Plan again when you are ready.',
  );
}

function workerFault(detail: string): AppError {
  return {
    code: 'internal',
    where: 'planning',
    detail: `Planning stopped because of a fault in the program (${detail}).`,
    hint: 'The book is unharmed. Report this with the log file, and try another seed.',
  };
}
