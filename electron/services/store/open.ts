import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { describePlace, freeName } from '../files/index.ts';
import { type Connection, openConnection } from './connection.ts';
import { copyWhole } from './copy.ts';
import { damaged, guardStore } from './failures.ts';
import { readHeader } from './header.ts';
import { APPLICATION_ID, migrate, userVersion } from './migrate.ts';
import { MIGRATIONS, type Migration } from './migrations/index.ts';
import { type PlaceOfBook, placeOfBook } from './place.ts';

export type OpenedFile = {
  readonly connection: Connection;
  /** Why nothing can be stored in this file; null where it can. */
  readonly readOnlyBecause: string | null;
  /** What a user should know of how the file was found: whole sentences; null where all is as usual. */
  readonly remark: string | null;
};

/** How long to wait for another program that has the file open, milliseconds: enough for one that is just closing. */
const BUSY_MS = 1500;

/**
 * Opens a book file: looks at its first bytes before SQLite touches it, takes it for this process alone, checks that it is
 * whole, and brings an older one to the newest version after putting a backup beside it.
 */
export async function openBookFile(
  file: string,
  migrations: readonly Migration[] = MIGRATIONS,
  place?: PlaceOfBook,
): Promise<Result<OpenedFile>> {
  return guardStore<OpenedFile>(file, async () => {
    const known = await checkHeader(file, migrations.length);
    if (!known.ok) return known;
    const readOnlyBecause = await whyReadOnly(file);
    const wasLeftOpen = await hasUnfinishedLog(file);
    if (readOnlyBecause !== null && wasLeftOpen) return unfinishedLog(file);
    const lies = place ?? (await placeOfBook(file));
    const connection = await openConnection(file, readOnlyBecause === null ? 'write' : 'frozen');
    try {
      if (readOnlyBecause === null) await settleIn(connection, lies);
      const fault = await findFault(connection, wasLeftOpen);
      if (fault !== null) {
        await connection.close();
        return damaged(file, fault);
      }
      const upgraded = readOnlyBecause === null ? await upgrade(connection, file, migrations) : ok<true>(true);
      if (!upgraded.ok) {
        await connection.close();
        return upgraded;
      }
      const remarks = [
        ...(wasLeftOpen ? [RECOVERED] : []),
        ...(lies.kind === 'shared' ? [sharedWords(lies.words)] : []),
      ];
      return ok({ connection, readOnlyBecause, remark: remarks.length === 0 ? null : remarks.join(' ') });
    } catch (error) {
      await connection.close().catch(() => undefined);
      throw error;
    }
  });
}

const RECOVERED =
  'The program ended without closing this book. Every edit that was shown as saved is here, and the whole file was checked.';

function sharedWords(words: string): string {
  return `The book lies ${words}: it is stored without a log beside it, and one machine at a time can have it open.`;
}

/** Null for a sound file. One that was not closed is checked in whole, every index and every reference; any other one more quickly. */
async function findFault(connection: Connection, wasLeftOpen: boolean): Promise<string | null> {
  const check = wasLeftOpen ? 'integrity_check' : 'quick_check';
  const health = await connection.all(`PRAGMA ${check}(1)`);
  const verdict = String(health[0]?.[check] ?? 'no answer');
  if (verdict !== 'ok') return verdict;
  if (!wasLeftOpen) return null;
  const [loose] = await connection.all('PRAGMA foreign_key_check');
  return loose === undefined ? null : `a row of ${loose.table} refers to one that is not there`;
}

/** The file's version, or why it is not opened. Only reads. */
export async function checkHeader(file: string, newest = MIGRATIONS.length): Promise<Result<number>> {
  const header = await readHeader(file);
  const where = describePlace(file);
  if (header.kind !== 'sqlite' || header.applicationId !== APPLICATION_ID) {
    return err(
      'not-a-book',
      where,
      'This file is not a Swardway book.',
      'Choose a book file (.swardway) or a book in its JSON form.',
    );
  }
  if (header.userVersion > newest) {
    return err(
      'newer-version',
      where,
      `The book was written by a newer Swardway (file version ${header.userVersion}, this one knows up to ${newest}).`,
      'Update Swardway, or ask for the book in its JSON form from the newer one.',
    );
  }
  return ok(header.userVersion);
}

/** Null where the file and its folder can be written to. */
async function whyReadOnly(file: string): Promise<string | null> {
  const writable = async (name: string) =>
    access(name, constants.W_OK).then(
      () => true,
      () => false,
    );
  if (!(await writable(file))) return 'The book file is write-protected.';
  if (!(await writable(path.dirname(file)))) return 'The folder of the book is write-protected.';
  return null;
}

/** True where the last edits are still in the log beside the file: without writing they cannot be read back. */
async function hasUnfinishedLog(file: string): Promise<boolean> {
  const logs = await Promise.all([`${file}-wal`, `${file}-journal`].map((name) => stat(name).catch(() => null)));
  return logs.some((log) => log !== null && log.size > 0);
}

function unfinishedLog(file: string): Result<never> {
  return err(
    'book-read-only',
    describePlace(file),
    'The book file is write-protected, and its last edits are still in the log file beside it.',
    'Copy the book file together with its -wal file to a folder of your own and open it there.',
  );
}

/**
 * Settings of the one connection. With the lock held from the first access on, no second program can open the book. In a shared folder a
 * rollback journal takes the place of the log; there a commit waits for the folder as well (EXTRA), or a lost journal could undo it.
 */
async function settleIn(connection: Connection, place: PlaceOfBook): Promise<void> {
  await connection.exec(`PRAGMA busy_timeout = ${BUSY_MS}`);
  await connection.exec('PRAGMA locking_mode = EXCLUSIVE');
  await connection.exec('PRAGMA trusted_schema = OFF');
  await connection.exec('PRAGMA foreign_keys = ON');
  await connection.exec(`PRAGMA journal_mode = ${place.kind === 'own' ? 'WAL' : 'DELETE'}`);
  await connection.exec(`PRAGMA synchronous = ${place.kind === 'own' ? 'FULL' : 'EXTRA'}`);
  await connection.exec('PRAGMA checkpoint_fullfsync = ON');
  // An empty write takes the lock at once, not with the first edit.
  await connection.transaction(async () => undefined);
}

/** Brings an older file to the newest version. First a whole copy of it is put beside it; where that fails the file stays as it is. */
async function upgrade(connection: Connection, file: string, migrations: readonly Migration[]): Promise<Result<true>> {
  // Of the file with its log: a step that was done last may stand in the log alone.
  const version = await userVersion(connection);
  if (version >= migrations.length) return ok(true);
  const copied = await copyWhole(connection, await freeName(`${file}.version-${version}`, '.backup'));
  if (copied.ok) await migrate(connection, migrations);
  return copied;
}

/** A new, empty file with the newest tables. The file must not exist. Rejects with SqliteFailure. */
export async function createEmptyFile(file: string): Promise<Connection> {
  const connection = await openConnection(file, 'create');
  try {
    await settleIn(connection, { kind: 'own' });
    await migrate(connection, MIGRATIONS);
    return connection;
  } catch (error) {
    await connection.close().catch(() => undefined);
    throw error;
  }
}
