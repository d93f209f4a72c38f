import { constants, copyFile, link, rename, rm } from 'node:fs/promises';
import { ok, type Result } from '../../../core/base/index.ts';
import { flushFile, freshBeside, isUnconfirmed, takePlace } from '../files/index.ts';
import { clearTheWay, logsOf } from './clear-the-way.ts';
import { openConnection } from './connection.ts';
import { removeFile } from './copy.ts';
import { damaged, guardStore } from './failures.ts';
import { checkHeader } from './open.ts';

/**
 * Puts a whole, checked copy in the place of a book file that nobody has open. `aside` keeps what stood there, with its log, under another
 * name. A crash leaves the old file, or the new one; with `aside` the old one is there under both names until the new one takes its place.
 * Fails as opening does where the copy is no sound book; the file is then as it was.
 */
export function replaceBook(file: string, copy: string, aside: string | null): Promise<Result<true>> {
  const fresh = freshBeside(file);
  return guardStore<true>(file, async () => {
    try {
      await copyFile(copy, fresh);
      await flushFile(fresh);
      const sound = await checkCopy(fresh, copy);
      if (!sound.ok) return sound;
      if (aside !== null) return await replaceDamaged(fresh, file, aside);
      const isClear = await clearTheWay(file);
      if (!isClear.ok) return isClear;
      await takePlace(fresh, file);
      return ok(true);
    } finally {
      await removeFile(fresh);
    }
  });
}

/** The damaged book stays under another name, and its logs under that name alone; where a step fails all is as it was. */
async function replaceDamaged(fresh: string, file: string, aside: string): Promise<Result<true>> {
  const [logs, asides] = [logsOf(file), logsOf(aside)];
  const moveLogs = async (from: readonly string[], to: readonly string[]): Promise<void> => {
    for (const [index, log] of from.entries()) await rename(log, to[index] ?? '').catch(ignoreMissing);
  };
  try {
    // Not every file system knows links.
    await link(file, aside).catch(() => copyFile(file, aside, constants.COPYFILE_EXCL));
    await moveLogs(logs, asides);
    await takePlace(fresh, file);
    return ok(true);
  } catch (error) {
    if (!isUnconfirmed(error)) {
      await moveLogs(asides, logs).catch(() => undefined);
      await rm(aside, { force: true }).catch(() => undefined);
    }
    throw error;
  }
}

/** Reads the whole copy, every page and every index, without writing to it. */
async function checkCopy(fresh: string, shown: string): Promise<Result<true>> {
  const known = await checkHeader(fresh);
  if (!known.ok) return known;
  const connection = await openConnection(fresh, 'frozen');
  try {
    const [health] = await connection.all('PRAGMA integrity_check(1)');
    const verdict = String(health?.integrity_check ?? 'no answer');
    return verdict === 'ok' ? ok(true) : damaged(shown, verdict);
  } finally {
    await connection.close();
  }
}

function ignoreMissing(error: unknown): void {
  if ((error as { code?: unknown }).code !== 'ENOENT') throw error;
}
