import path from 'node:path';
import { Worker } from 'node:worker_threads';
import type { AppError, Result } from '../../../core/base/index.ts';
import { isOutOfMemory, roadsFault, tookTooMuch } from './failures.ts';
import type { RoadAsked, RoadOrder, RoadQuestion, RoadReply, RoadTold } from './messages.ts';
import { createReins } from './reins.ts';

/** A thread that holds the roads of one file and answers questions about them. */
export type Desk = {
  /** Settles once, never rejects. Errors: those of reading the file, 'cancelled', 'internal'. */
  readonly ask: <Kind extends RoadQuestion['kind']>(
    question: Extract<RoadQuestion, { readonly kind: Kind }>,
  ) => Promise<Result<RoadReply[Kind]>>;
  readonly end: () => void;
};

export type DeskOptions = {
  /** Called once, when it answers no more questions. */
  readonly onEnd?: () => void;
  /** How long its thread may give no sign of life while somebody waits, ms. */
  readonly patienceMs?: number;
};

/** A desk that nobody has asked for so long is put away, ms. */
const IDLE_MS = 5 * 60_000;
/** The longest work between two signs of life, the network of a large state, takes some seconds. */
const PATIENCE_MS = 120_000;
/** It is looked at so many times within the patience. Looks are counted, not the clock: a computer that slept is no stuck thread. */
const LOOKS = 4;

/** @param file a road file, or an extract */
export function openDesk(workerFile: string, file: string, options: DeskOptions = {}): Desk {
  const { onEnd, patienceMs = PATIENCE_MS } = options;
  const where = path.basename(file);
  const reins = createReins();
  const order: RoadOrder = { kind: 'desk', file, where, reins: reins.shared };
  const worker = new Worker(workerFile, { workerData: order });
  const waiting = new Map<number, (result: RoadTold['result']) => void>();
  let nextId = 1;
  let fault: AppError | null = null;
  let idle: NodeJS.Timeout | undefined;
  const giveUp = (error: AppError): void => {
    if (fault !== null) return;
    fault = error;
    clearTimeout(idle);
    clearInterval(watch);
    for (const settle of waiting.values()) settle({ ok: false, error });
    waiting.clear();
    onEnd?.();
  };
  const end = (): void => {
    const detail = 'The roads were put away.';
    giveUp({ code: 'cancelled', where, detail, hint: 'Ask again.' });
    reins.stop();
    void worker.terminate();
  };
  let seen = 0;
  let quiet = 0;
  const watch = setInterval(() => {
    const signs = reins.looks();
    quiet = waiting.size === 0 || signs !== seen ? 0 : quiet + 1;
    seen = signs;
    if (quiet < LOOKS) return;
    giveUp(roadsFault(where, 'its thread does not answer'));
    end();
  }, patienceMs / LOOKS).unref();
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
