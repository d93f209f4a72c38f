import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { describePlace } from '../files/index.ts';
import { type Connection, openConnection } from './connection.ts';
import { damaged, guardStore } from './failures.ts';
import { readHeader } from './header.ts';
import { APPLICATION_ID, migrate } from './migrate.ts';
import { MIGRATIONS, type Migration } from './migrations/index.ts';

export type OpenedFile = {
  readonly connection: Connection;
  /** Why nothing can be stored in this file; null where it can. */
  readonly readOnlyBecause: string | null;
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
): Promise<Result<OpenedFile>> {
  return guardStore<OpenedFile>(file, async () => {
    const known = await checkHeader(file, migrations.length);
    if (!known.ok) return known;
    const readOnlyBecause = await whyReadOnly(file);
    if (readOnlyBecause !== null && (await hasUnfinishedLog(file))) return unfinishedLog(file);
    const connection = await openConnection(file, readOnlyBecause === null ? 'write' : 'frozen');
    try {
      if (readOnlyBecause === null) await settleIn(connection);
      const health = await connection.all('PRAGMA quick_check(1)');
      const verdict = String(health[0]?.quick_check ?? 'no answer');
      if (verdict !== 'ok') {
        await connection.close();
        return damaged(file, verdict);
      }
      if (readOnlyBecause === null) await upgrade(connection, file, known.value, migrations);
      return ok({ connection, readOnlyBecause });
    } catch (error) {
      await connection.close().catch(() => undefined);
      throw error;
    }
  });
}

/** The file's version, or why it is not opened. Only reads. */
async function checkHeader(file: string, newest: number): Promise<Result<number>> {
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
      'Update Swardway, or ask for the book in its JSON form from the newer one; this file was not touched.',
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
  const log = await stat(`${file}-wal`).catch(() => null);
  return log !== null && log.size > 0;
}

function unfinishedLog(file: string): Result<never> {
  return err(
    'book-read-only',
    describePlace(file),
    'The book file is write-protected, and its last edits are still in the log file beside it.',
    'Copy the book file together with its -wal file to a folder of your own and open it there.',
  );
}

/** Settings of the one connection. With the lock held from the first access on, no second program can open the book. */
async function settleIn(connection: Connection): Promise<void> {
  await connection.exec(`PRAGMA busy_timeout = ${BUSY_MS}`);
  await connection.exec('PRAGMA locking_mode = EXCLUSIVE');
  await connection.exec('PRAGMA trusted_schema = OFF');
  await connection.exec('PRAGMA foreign_keys = ON');
  await connection.exec('PRAGMA journal_mode = WAL');
  await connection.exec('PRAGMA synchronous = FULL');
  await connection.exec('PRAGMA checkpoint_fullfsync = ON');
  // An empty write takes the lock at once, not with the first edit.
  await connection.transaction(async () => undefined);
}

async function upgrade(
  connection: Connection,
  file: string,
  version: number,
  migrations: readonly Migration[],
): Promise<void> {
  if (version >= migrations.length) return;
  const backup = `${file}.version-${version}.backup`;
  if ((await stat(backup).catch(() => null)) === null) await connection.run('VACUUM INTO ?', [backup]);
  await migrate(connection, migrations);
}

/** A new, empty file with the newest tables. The file must not exist. Rejects with SqliteFailure. */
export async function createEmptyFile(file: string): Promise<Connection> {
  const connection = await openConnection(file, 'create');
  try {
    await settleIn(connection);
    await migrate(connection, MIGRATIONS);
    return connection;
  } catch (error) {
    await connection.close().catch(() => undefined);
    throw error;
  }
}
