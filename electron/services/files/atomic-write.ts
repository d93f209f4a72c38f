import { randomBytes } from 'node:crypto';
import { type FileHandle, mkdir, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import { fileFailure, isFileError } from './failures.ts';

/** The steps of a write that a test can make fail. */
export type WriteSteps = {
  readonly open: (file: string) => Promise<Pick<FileHandle, 'writeFile' | 'sync' | 'close'>>;
  readonly rename: (from: string, to: string) => Promise<void>;
};
const REAL_STEPS: WriteSteps = { open: (file) => open(file, 'wx'), rename };

/**
 * Writes a whole file so that a crash leaves either the old one or the new one: a new file beside it, flushed to the disk, then
 * renamed over it. Fails with 'disk-full' or 'file-not-writable'; the old file is then unchanged and the new one removed.
 */
export async function writeWhole(
  file: string,
  content: string | Uint8Array,
  steps: WriteSteps = REAL_STEPS,
): Promise<Result<true>> {
  const fresh = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.new`);
  try {
    await mkdir(path.dirname(file), { recursive: true });
    const handle = await steps.open(fresh);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await steps.rename(fresh, file);
    await flushFolder(path.dirname(file));
    return ok(true);
  } catch (error) {
    await rm(fresh, { force: true }).catch(() => undefined);
    if (!isFileError(error)) throw error;
    const failure = fileFailure(error, file);
    // A folder that could not be opened for writing reads as "not readable" by its system call alone.
    if (failure.error.code !== 'file-not-readable') return failure;
    return { ok: false, error: { ...failure.error, code: 'file-not-writable', hint: 'Choose a folder of your own.' } };
  }
}

/** Flushes the folder's own entry; systems that cannot do that do it by themselves. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
