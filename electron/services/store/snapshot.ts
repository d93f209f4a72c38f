import { copyFile, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** A copy of a book file that another program has open, to be read; `remove` takes it away. */
export type Snapshot = { readonly file: string; readonly remove: () => Promise<void> };

/** How often the copy is made anew where the book was written to meanwhile. */
const MOST_TRIES = 5;
/** Endings of what SQLite keeps beside a book: the write-ahead log, or the journal in shared folders. */
const LOGS = ['-wal', '-journal'];

/**
 * Copies a book with its log as both stand, into a folder of the system's for passing files. A copy during which either changed is thrown
 * away and made again. Null where the other program never leaves it alone for so long. Rejects with the file system's own error.
 */
export async function takeSnapshot(book: string): Promise<Snapshot | null> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-read-'));
  const remove = () => rm(folder, { recursive: true, force: true });
  const file = path.join(folder, path.basename(book));
  try {
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const before = await stampOf(book);
      await copyFile(book, file);
      for (const log of LOGS) {
        await rm(`${file}${log}`, { force: true });
        await copyFile(`${book}${log}`, `${file}${log}`).catch(ignoreMissing);
      }
      if ((await stampOf(book)) === before) return { file, remove };
    }
  } catch (error) {
    await remove();
    throw error;
  }
  await remove();
  return null;
}

/** Size and time of the last change of a book and of its log. */
async function stampOf(book: string): Promise<string> {
  const marks = ['', ...LOGS]
    .map((log) => `${book}${log}`)
    .map(async (name) => {
      const found = await stat(name, { bigint: true }).catch(() => null);
      return found === null ? 'none' : `${found.size} ${found.mtimeNs}`;
    });
  return (await Promise.all(marks)).join(', ');
}

function ignoreMissing(error: unknown): void {
  if ((error as { code?: unknown }).code !== 'ENOENT') throw error;
}
