import { randomBytes } from 'node:crypto';
import { type FileHandle, mkdir, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { type Err, err, ok, type Result } from '../../../core/base/index.ts';
import { fileFailure, isFileError } from './failures.ts';
import { describePlace, shortFolder } from './places.ts';

/** The steps of a write that a test can make fail. */
export type WriteSteps = {
  readonly open: (file: string) => Promise<Pick<FileHandle, 'writeFile' | 'sync' | 'close'>>;
  readonly rename: (from: string, to: string) => Promise<void>;
};
const REAL_STEPS: WriteSteps = { open: (file) => open(file, 'wx'), rename };

/**
 * Writes a whole file so that a crash leaves either the old one or the new one: a new file beside it, flushed to the disk, then
 * renamed over it. Fails with 'disk-full' or 'file-not-writable'; the old file is then unchanged and the new one removed. A folder
 * that is missing is never made, but fails with 'file-not-found'.
 */
export async function writeWhole(
  file: string,
  content: string | Uint8Array,
  steps: WriteSteps = REAL_STEPS,
): Promise<Result<true>> {
  const fresh = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.new`);
  try {
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
    if (error.code === 'ENOENT') return folderMissing(file);
    const failure = fileFailure(error, file);
    // A folder that could not be opened for writing reads as "not readable" by its system call alone.
    if (failure.error.code !== 'file-not-readable') return failure;
    return { ok: false, error: { ...failure.error, code: 'file-not-writable', hint: 'Choose a folder of your own.' } };
  }
}

/** As `writeWhole`, for files of the program's own: their folder is made where it is missing. */
export async function writeOwn(file: string, content: string | Uint8Array): Promise<Result<true>> {
  // Where the folder cannot be made the write says why.
  await mkdir(path.dirname(file), { recursive: true }).catch(() => undefined);
  return writeWhole(file, content);
}

/** The error for an output file whose folder is not there. */
export function folderMissing(file: string): Err {
  const detail = `The folder ${shortFolder(path.dirname(file))} is not there, so nothing can be written into it.`;
  return err('file-not-found', describePlace(file), detail, 'Make the folder first, or choose another one.');
}

/** Flushes the folder's own entry; systems that cannot do that do it by themselves. */
export async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
