import { Worker } from 'node:worker_threads';
import type { Progress, Result } from '../../../core/base/index.ts';
import { keepFigures, keptFigures } from '../../../core/passes/index.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { ReckonMessage, ReckonOrder, ReckonWish } from './messages.ts';

export type Reckoning = {
  /** Asks the reckoning to end. */
  readonly cancel: () => void;
  /** Whether one of the problems asked about has the fingerprint. Settles once, never rejects. */
  readonly outcome: Promise<Result<{ readonly fits: boolean }>>;
};

/** A cancelled reckoning ends between two zones; one that does not is ended by force. milliseconds */
const PATIENCE_MS = 2000;

/**
 * Reckons the work of a round in a thread of its own, and keeps the figures of its passes in this process: whoever plans it next, or
 * asks again, starts with them.
 */
export function startReckoning(
  workerFile: string,
  wish: ReckonWish,
  onProgress: (progress: Progress) => void = () => undefined,
): Reckoning {
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: ReckonOrder = { reckon: wish, figures: keptFigures(), stopFlag };
  const worker = new Worker(workerFile, { workerData: order });
  let killer: NodeJS.Timeout | undefined;
  const outcome = new Promise<Result<{ readonly fits: boolean }>>((settle) => {
    const finish = (result: Result<{ readonly fits: boolean }>): void => {
      clearTimeout(killer);
      settle(result);
      void worker.terminate();
    };
    worker.on('message', (message: ReckonMessage) => {
      if (message.kind === 'progress') onProgress(message.progress);
      else if (message.kind === 'reckoned') {
        keepFigures(message.figures);
        finish(message.result);
      }
    });
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(gaveNoPlan()));
  });
  const cancel = (): void => {
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    killer ??= setTimeout(() => void worker.terminate(), PATIENCE_MS);
  };
  return { cancel, outcome };
}
