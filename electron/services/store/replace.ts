import { randomBytes } from 'node:crypto';
import { copyFile, link, rename } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import { flushFolder } from '../files/index.ts';
import { openConnection } from './connection.ts';
import { flushFile, removeFile } from './copy.ts';
import { damaged, guardStore } from './failures.ts';
import { checkHeader } from './open.ts';

/** What SQLite keeps beside a file. A log that stays beside another file would be played into that one. */
const LOGS = ['-wal', '-journal', '-shm'];

/**
 * Puts a whole, checked copy in the place of a book file that nobody has open. `aside` keeps what stood there, with its log, under another
 * name. A crash leaves the old file, or the new one; with `aside` the old one is there under both names until the new one takes its place.
 * Fails as opening does where the copy is no sound book; the file is then as it was.
 */
export function replaceBook(file: string, copy: string, aside: string | null): Promise<Result<true>> {
  const fresh = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.new`);
  return guardStore<true>(file, async () => {
    try {
      await copyFile(copy, fresh);
      await flushFile(fresh);
      const sound = await checkCopy(fresh, copy);
      if (!sound.ok) return sound;
      if (aside !== null) await link(file, aside).catch(() => copyFile(file, aside));
      for (const log of LOGS) {
        if (aside === null) await removeFile(`${file}${log}`);
        else await rename(`${file}${log}`, `${aside}${log}`).catch(ignoreMissing);
      }
      await rename(fresh, file);
      await flushFolder(path.dirname(file));
      return ok(true);
    } finally {
      await removeFile(fresh);
    }
  });
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
