import path from 'node:path';
import { Worker } from 'node:worker_threads';
import type { AppError, Progress, Result } from '../../../core/base/index.ts';
import { writeWhole } from '../files/index.ts';
import { importCancelled, isOutOfMemory, roadsFault, tookTooMuch } from './failures.ts';
import type { ImportMessage, RoadOrder, RoadsAbout } from './messages.ts';
import { createReins } from './reins.ts';

/** What an import needs beside the paths. */
export type ImportOptions = {
  /** The bundled roads-worker. */
  readonly workerFile: string;
  /** Ends the import with the error `cancelled`. */
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
};

/** What an import may keep in memory, MiB: besides it there are rows of numbers outside this limit. */
const MOST_MEMORY = 1500;
/** How long a cancelled import may take to notice it, milliseconds: it is answered within 200. */
const PATIENCE_MS = 150;

/**
 * Reads an extract in a thread of its own and writes the road file whole: a road file is the old one or the new one, never a part.
 * Errors: those of the reading (`readRoads`), `cancelled`, `file-too-large`, and those of writing.
 */
export async function importRoads(
  extract: string,
  roadsFile: string,
  options: ImportOptions,
): Promise<Result<RoadsAbout>> {
  const where = path.basename(extract);
  const read = await readInThread(extract, where, options);
  if (!read.ok) return read;
  if (options.signal?.aborted === true) return importCancelled(where);
  const written = await writeWhole(roadsFile, read.value.bytes);
  return written.ok ? { ok: true, value: read.value.about } : written;
}

type Read = { readonly bytes: Uint8Array; readonly about: RoadsAbout };

function readInThread(
  file: string,
  where: string,
  { workerFile, signal, onProgress }: ImportOptions,
): Promise<Result<Read>> {
  if (signal?.aborted === true) return Promise.resolve(importCancelled(where));
  const reins = createReins();
  const order: RoadOrder = { kind: 'import', file, where, reins: reins.shared };
  const worker = new Worker(workerFile, {
    workerData: order,
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
  });
  return new Promise((settle) => {
    let patience: NodeJS.Timeout | undefined;
    const end = (result: Result<Read>): void => {
      clearTimeout(patience);
      signal?.removeEventListener('abort', cancel);
      settle(signal?.aborted === true ? importCancelled(where) : result);
      void worker.terminate();
    };
    const fail = (error: AppError): void => end({ ok: false, error });
    const cancel = (): void => {
      reins.stop();
      patience ??= setTimeout(() => end(importCancelled(where)), PATIENCE_MS);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    worker.on('message', (message: ImportMessage) => {
      if (message.kind === 'progress') onProgress?.(message.progress);
      else if (message.kind === 'failed') fail(message.error);
      else end({ ok: true, value: message });
    });
    worker.on('error', (error) => fail(isOutOfMemory(error) ? tookTooMuch(where) : roadsFault(where, error.message)));
    worker.on('exit', () => fail(roadsFault(where, 'its thread ended')));
  });
}
