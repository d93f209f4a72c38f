import { randomBytes } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import path from 'node:path';
import { type Err, err, ok, type Result } from '../../../core/base/index.ts';
import { fileFailure, isFileError } from './failures.ts';
import { describePlace, shortFolder } from './places.ts';
import { takePlace } from './take-place.ts';

/** The ending of a file that is not whole yet. */
const FRESH = '.new';
/** Such a file as `freshBeside` names it, and what SQLite keeps beside one. */
const FRESH_NAME = /^\..+\.[0-9a-f]{12}\.new(-wal|-journal|-shm)?$/;

/** A name that nobody else uses, beside the file, for what is to take its place once it is whole. */
export function freshBeside(file: string): string {
  return path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}${FRESH}`);
}

/** True for the name of a file that was never finished, or is being written. */
export function isFreshName(name: string): boolean {
  return FRESH_NAME.test(name);
}

/**
 * Writes a whole file so that a crash leaves either the old one or the new one: a new file beside it, flushed to the disk, then
 * renamed over it, then the folder flushed. Fails with 'disk-full' or 'file-not-writable'; the old file is then unchanged and the new
 * one removed, unless it was the last flush that failed (`UNCONFIRMED`). A folder that is missing is never made, but fails with
 * 'file-not-found'.
 */
export async function writeWhole(file: string, content: string | Uint8Array): Promise<Result<true>> {
  const fresh = freshBeside(file);
  try {
    const handle = await open(fresh, 'wx');
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await takePlace(fresh, file);
    return ok(true);
  } catch (error) {
    await rm(fresh, { force: true }).catch(() => undefined);
    if (!isFileError(error)) throw error;
    if (error.code === 'ENOENT') return folderMissing(file);
    return fileFailure(error, file, 'write');
  }
}

/** As `writeWhole`, failures too, for files of the program's own: their folder is made where it is missing. */
export async function writeOwn(file: string, content: string | Uint8Array): Promise<Result<true>> {
  // Where the folder cannot be made the write says why.
  await mkdir(path.dirname(file), { recursive: true }).catch(() => undefined);
  return writeWhole(file, content);
}

/** The error for an output file whose folder is not there. */
export function folderMissing(file: string): Err {
  const detail = `The folder ${shortFolder(path.dirname(file))} is not there, so nothing was written into it.`;
  return err('file-not-found', describePlace(file), detail, 'Make the folder first, or choose another one.');
}
