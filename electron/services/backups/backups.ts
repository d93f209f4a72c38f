import { createHash } from 'node:crypto';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Backup } from '../../../core/contract/index.ts';
import { describePlace, fileNameFrom, freeName, isFreshName } from '../files/index.ts';
import { type BookStore, replaceBook } from '../store/index.ts';
import { superfluous } from './keep.ts';

/** A book as it stands now, to be copied. */
export type BookNow = { readonly store: BookStore; readonly revision: number; readonly properties: number };

/** Copies of books that the program takes by itself, in a folder of its own for each book file. */
export type Backups = {
  /** Notes where a book stood when it was opened, so that only what changes from then on is copied. */
  readonly watch: (now: BookNow) => Promise<void>;
  /** True where the book was edited since the last copy and a quarter of an hour has passed. */
  readonly isDue: (now: BookNow) => boolean;
  /** Takes a copy where the book was edited since the last one; null where it was not. Errors: those of the store. */
  readonly take: (now: BookNow) => Promise<Result<Backup | null>>;
  /** Newest first. */
  readonly list: (file: string) => Promise<readonly Backup[]>;
  /**
   * Puts a backup in the place of the book file, which must be closed. `keepOld` sets the file that stood there aside under another name (a
   * damaged one, which cannot be copied). Fails with 'backup-missing', 'book-damaged' for a backup that is not whole, or as files do; the
   * book is then as it was.
   */
  readonly restore: (file: string, backupId: string, keepOld: boolean) => Promise<Result<true>>;
};

const EVERY_MS = 15 * 60_000;
const ENDING = '.swardway';
/** A number of edits that no book has. */
const NEVER = -1;
/** A copy that was never finished is taken away after so long. */
const LEFTOVER_MS = 60 * 60_000;
/** Date and time, edits and lawns: "20261127T051810123Z-41-640". */
const NAME = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z-(\d+)-(\d+)$/;

/**
 * Backups below a folder of the program's own, by the host's clock. What was left unfinished is taken away with the
 * next copy.
 */
export function createBackups(folder: string, now: () => Date): Backups {
  const last = new Map<string, { readonly revision: number; readonly at: number }>();
  const folderOf = (file: string): string => {
    const mark = createHash('sha256').update(file).digest('hex').slice(0, 12);
    return path.join(folder, `${fileNameFrom(path.basename(file, ENDING))}-${mark}`);
  };
  const list = async (file: string): Promise<readonly Backup[]> => {
    const names = await readdir(folderOf(file)).catch(() => []);
    const backups = names.flatMap((name) => (name.endsWith(ENDING) ? readName(name.slice(0, -ENDING.length)) : []));
    return backups.sort((a, b) => (a.takenAt < b.takenAt ? 1 : -1));
  };
  const isChanged = ({ store, revision }: BookNow): boolean => last.get(store.file)?.revision !== revision;
  return {
    list,
    watch: async ({ store, revision }) => {
      const [newest] = await list(store.file);
      // A backup with another number of edits is of another state; the book may well come to that number in another way.
      const isCopied = newest === undefined || newest.revision === revision;
      last.set(store.file, { revision: isCopied ? revision : NEVER, at: now().getTime() });
    },
    isDue: (book) => {
      const sinceMs = now().getTime() - (last.get(book.store.file)?.at ?? 0);
      // A clock that was set back says nothing of how long ago the last copy was made.
      return isChanged(book) && (sinceMs >= EVERY_MS || sinceMs < 0);
    },
    take: async (book) => {
      const { store, revision, properties } = book;
      if (store.readOnlyBecause !== null || !isChanged(book)) return ok(null);
      const at = now();
      const backup = describeBackup(at, revision, properties);
      const target = folderOf(store.file);
      // Where the folder cannot be made the copy says why.
      await mkdir(target, { recursive: true }).catch(() => undefined);
      const copied = await store.copyTo(path.join(target, `${backup.backupId}${ENDING}`));
      if (!copied.ok) return copied;
      last.set(store.file, { revision, at: at.getTime() });
      await tidy(target, await list(store.file), backup, at);
      return ok(backup);
    },
    restore: async (file, backupId, keepOld) => {
      const known = (await list(file)).some((each) => each.backupId === backupId);
      if (!known) return missing(file);
      const stamp = stampOf(now());
      const aside = keepOld ? await freeName(`${file}.set-aside-${stamp}`, '') : null;
      return replaceBook(file, path.join(folderOf(file), `${backupId}${ENDING}`), aside);
    },
  };
}

/** Takes away what is not kept. Where that fails it is tried again with the next copy. */
async function tidy(folder: string, backups: readonly Backup[], taken: Backup, at: Date): Promise<void> {
  const leftovers = (await readdir(folder)).filter(isFreshName);
  for (const name of leftovers) {
    const status = await stat(path.join(folder, name)).catch(() => null);
    const isOld = status !== null && Math.abs(at.getTime() - status.mtimeMs) > LEFTOVER_MS;
    if (isOld) await rm(path.join(folder, name), { force: true }).catch(() => undefined);
  }
  for (const { backupId } of superfluous(backups, at)) {
    if (backupId === taken.backupId) continue;
    await rm(path.join(folder, `${backupId}${ENDING}`), { force: true }).catch(() => undefined);
  }
}

function stampOf(at: Date): string {
  return at.toISOString().replace(/[-:.]/g, '');
}

function describeBackup(at: Date, revision: number, properties: number): Backup {
  return { backupId: `${stampOf(at)}-${revision}-${properties}`, takenAt: at.toISOString(), revision, properties };
}

function readName(name: string): readonly Backup[] {
  const found = NAME.exec(name);
  if (found === null) return [];
  const [, year, month, day, hour, minute, second, milli, revision, properties] = found;
  const takenAt = `${year}-${month}-${day}T${hour}:${minute}:${second}.${milli}Z`;
  if (Number.isNaN(Date.parse(takenAt))) return [];
  return [{ backupId: name, takenAt, revision: Number(revision), properties: Number(properties) }];
}

function missing(file: string): Result<never> {
  return err(
    'backup-missing',
    describePlace(file),
    'This backup is not there any more; the book was left as it is.',
    'Choose another one of the list.',
  );
}
