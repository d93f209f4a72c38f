import { Worker } from 'node:worker_threads';
import { ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { keptFigures } from '../../../core/passes/index.ts';
import type { GoTable } from '../../../core/plan/board/index.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { FitMessage, FitOrder } from './messages.ts';

/** Tells in a thread of its own who can go to which lawn of a round. Settles once, never rejects; null without such round or treatment. */
export function tellWhoCanGo(
  workerFile: string,
  fit: { readonly book: Book; readonly roundId: string; readonly treatmentId: string },
): Promise<Result<GoTable | null>> {
  const order: FitOrder = {
    fit,
    figures: keptFigures(),
    stopFlag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
  };
  const worker = new Worker(workerFile, { workerData: order });
  return new Promise((settle) => {
    const finish = (result: Result<GoTable | null>): void => {
      settle(result);
      void worker.terminate();
    };
    worker.on('message', ({ table }: FitMessage) => finish(ok(table)));
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(gaveNoPlan()));
  });
}
