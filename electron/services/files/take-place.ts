import { open, rename } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { isFileError, UNCONFIRMED } from './failures.ts';

/** Waits until a file is on the disk. Rejects with the system's error. */
export async function flushFile(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Gives a whole file that is on the disk the name of another one, which it replaces, and flushes the folder, so that the name is on the disk
 * as well. Rejects with the system's error; unless its code is `UNCONFIRMED` the old file is then where it was.
 */
export async function takePlace(fresh: string, file: string): Promise<void> {
  await renameAtLast(fresh, file);
  await flushFolder(path.dirname(file));
}

/** How often a name that is held for a moment is tried again, and how long is waited in between, ms. */
const TRIES = 5;
const WAIT_MS = 40;

/** On Windows a program that looks through new files holds them for a moment, and a rename over one is then refused. */
async function renameAtLast(from: string, to: string): Promise<void> {
  for (let left = TRIES; ; left -= 1) {
    try {
      return await rename(from, to);
    } catch (error) {
      if (left <= 1 || !isHeld(error)) throw error;
      await wait(WAIT_MS);
    }
  }
}

function isHeld(error: unknown): boolean {
  if (!isFileError(error)) return false;
  return error.code === 'EBUSY' || (process.platform === 'win32' && ['EPERM', 'EACCES'].includes(error.code));
}

/** What a disk says that could not keep what it was told; any other answer means that this system flushes folders by itself. */
const LOST = ['EIO', 'ENOSPC', 'EDQUOT'];

async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  if (handle === null) return;
  try {
    await handle.sync();
  } catch (error) {
    if (!isFileError(error) || !LOST.includes(error.code)) return;
    throw Object.assign(error, { code: UNCONFIRMED });
  } finally {
    await handle.close();
  }
}
