import path from 'node:path';
import { Worker } from 'node:worker_threads';
import type { AppError, Result } from '../../../core/base/index.ts';
import { isOutOfMemory, roadsFault, tookTooMuch } from './failures.ts';
import type { RoadAsked, RoadOrder, RoadQuestion, RoadReply, RoadTold } from './messages.ts';

/** A thread that holds the roads of one file and answers questions about them. */
export type Desk = {
  /** Settles once, never rejects. Errors: those of reading the file, 'cancelled', 'internal'. */
  readonly ask: <Kind extends RoadQuestion['kind']>(
    question: Extract<RoadQuestion, { readonly kind: Kind }>,
  ) => Promise<Result<RoadReply[Kind]>>;
  readonly end: () => void;
};

/** A desk that nobody has asked for so long is put away, ms. */
const IDLE_MS = 5 * 60_000;

/** @param file a road file, or an extract */
export function openDesk(workerFile: string, file: string, onEnd: () => void = () => undefined): Desk {
  const where = path.basename(file);
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: RoadOrder = { kind: 'desk', file, where, stopFlag };
  const worker = new Worker(workerFile, { workerData: order });
  const waiting = new Map<number, (result: RoadTold['result']) => void>();
  let nextId = 1;
  let fault: AppError | null = null;
  let idle: NodeJS.Timeout | undefined;
  const giveUp = (error: AppError): void => {
    if (fault !== null) return;
    fault = error;
    clearTimeout(idle);
    for (const settle of waiting.values()) settle({ ok: false, error });
    waiting.clear();
    onEnd();
  };
  const end = (): void => {
    const detail = 'The roads were put away.';
    giveUp({ code: 'cancelled', where, detail, hint: 'Ask again.' });
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    void worker.terminate();
  };
  worker.on('message', ({ id, result }: RoadTold) => {
    waiting.get(id)?.(result);
    waiting.delete(id);
    if (waiting.size === 0) idle = setTimeout(end, IDLE_MS).unref();
  });
  worker.on('error', (error) => giveUp(isOutOfMemory(error) ? tookTooMuch(where) : roadsFault(where, error.message)));
  worker.on('exit', () => giveUp(roadsFault(where, 'its thread ended')));
  const ask = (question: RoadQuestion): Promise<RoadTold['result']> => {
    if (fault !== null) return Promise.resolve({ ok: false, error: fault });
    clearTimeout(idle);
    const id = nextId;
    nextId += 1;
    return new Promise((settle) => {
      waiting.set(id, settle);
      const asked: RoadAsked = { id, question };
      worker.postMessage(asked);
    });
  };
  return { ask: ask as Desk['ask'], end };
}
