import { Worker } from 'node:worker_threads';
import type { Result } from '../../../core/base/index.ts';
import { gaveNoPlan, workerFault } from './failures.ts';

/** One question to a thread of its own. */
export type Errand<T> = {
  /** Settles once, never rejects. */
  readonly answer: Promise<Result<T>>;
  /** Answers `cancelled` at once, and ends the thread. */
  readonly end: () => void;
};

/**
 * Sends a thread out with an order; it ends with its answer.
 *
 * @param read the answer in a message, or null where the message is none yet
 */
export function sendErrand<Message, T>(
  workerFile: string,
  order: object,
  read: (message: Message) => Result<T> | null,
): Errand<T> {
  const worker = new Worker(workerFile, { workerData: order });
  let finish: (result: Result<T>) => void = () => undefined;
  const answer = new Promise<Result<T>>((settle) => {
    finish = (result) => {
      settle(result);
      void worker.terminate();
    };
    worker.on('message', (message: Message) => {
      const result = read(message);
      if (result !== null) finish(result);
    });
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish({ ok: false, error: workerFault('its thread ended') }));
  });
  return { answer, end: () => finish(gaveNoPlan()) };
}

/** An errand whose answer is known already. */
export function answered<T>(result: Result<T>): Errand<T> {
  return { answer: Promise.resolve(result), end: () => undefined };
}
