import { Worker } from 'node:worker_threads';
import type { Progress, Result } from '../../../core/base/index.ts';
import { readingCancelled, readingFault, tookTooLong, tookTooMuch } from './failures.ts';
import type { GroundMessage, GroundOrder, GroundWork } from './messages.ts';
import { type Watch, watchTime } from './watch.ts';

export type WorkerAnswer = Exclude<GroundMessage, { readonly kind: 'begun' | 'progress' | 'failed' }>;

export type WorkerOptions = {
  /** The bundled ground-worker. */
  readonly workerFile: string;
  /** The file's name, for errors. */
  readonly where: string;
  /** On the processor, from the moment at which the worker has begun: see watchTime. */
  readonly limitMs: number;
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
};

/** What a reading may keep in memory, MiB. */
const MOST_MEMORY = 500;
/** A thread that has not begun by then never will, milliseconds. */
const SLOWEST_START_MS = 20_000;
/** How long a cancelled reading may take to notice it, milliseconds: it is answered within 200. */
const PATIENCE_MS = 150;

/**
 * Reads in a thread of its own, which is ended by force when it takes too long or too much memory, so that no file can stop or
 * kill the program. Settles once, never rejects. Errors: those of the reading; `file-not-readable` after the time limit,
 * `file-too-large` beyond the memory limit, `cancelled`, `internal`.
 */
export function runGroundWorker(work: GroundWork, options: WorkerOptions): Promise<Result<WorkerAnswer>> {
  const { workerFile, where, limitMs, signal, onProgress } = options;
  if (signal?.aborted === true) return Promise.resolve(readingCancelled(where));
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const worker = new Worker(workerFile, {
    workerData: { ...work, stopFlag } satisfies GroundOrder,
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
  });
  return new Promise((settle) => {
    const late = setTimeout(() => end(tookTooLong(where, SLOWEST_START_MS)), SLOWEST_START_MS);
    let patience: NodeJS.Timeout | undefined;
    let watch: Watch | null = null;
    const cancel = (): void => {
      Atomics.store(new Int32Array(stopFlag), 0, 1);
      patience ??= setTimeout(() => end(readingCancelled(where)), PATIENCE_MS);
    };
    const end = (result: Result<WorkerAnswer>): void => {
      clearTimeout(late);
      clearTimeout(patience);
      watch?.stop();
      signal?.removeEventListener('abort', cancel);
      settle(signal?.aborted === true ? readingCancelled(where) : result);
      void worker.terminate();
    };
    signal?.addEventListener('abort', cancel, { once: true });
    worker.on('message', (message: GroundMessage) => {
      if (message.kind === 'begun') {
        clearTimeout(late);
        watch = watchTime(limitMs, () => end(tookTooLong(where, limitMs)));
      } else if (message.kind === 'progress') onProgress?.(message.progress);
      else end(message.kind === 'failed' ? { ok: false, error: message.error } : { ok: true, value: message });
    });
    worker.on('error', (error) => end(isOutOfMemory(error) ? tookTooMuch(where) : readingFault(where, error.message)));
    worker.on('exit', () => end(readingFault(where, 'its thread ended')));
  });
}

function isOutOfMemory(error: Error): boolean {
  return 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}
