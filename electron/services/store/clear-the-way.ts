import { rm, stat } from 'node:fs/promises';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { describePlace } from '../files/index.ts';
import { openConnection, SqliteFailure } from './connection.ts';
import { readHeader } from './header.ts';

/** What SQLite keeps beside a file: the write-ahead log, the journal of shared folders, the log's index. */
export function logsOf(file: string): readonly string[] {
  return [`${file}-wal`, `${file}-journal`, `${file}-shm`];
}

/**
 * Makes sure that a book may take the place of what stands at `file`: nobody has that open, and no log lies beside it, which SQLite would play
 * into the new one. A book that was not closed is closed first, its last edits put into it. Fails with 'book-locked'; rejects with the
 * file system's own error.
 */
export async function clearTheWay(file: string): Promise<Result<true>> {
  const isThere = (await stat(file).catch(() => null))?.isFile() === true;
  if (isThere && (await readHeader(file)).kind === 'sqlite') {
    try {
      const connection = await openConnection(file, 'write');
      try {
        await connection.exec('PRAGMA locking_mode = EXCLUSIVE');
        await connection.exec('BEGIN EXCLUSIVE');
        await connection.exec('ROLLBACK');
        await connection.exec('PRAGMA wal_checkpoint(TRUNCATE)');
      } finally {
        await connection.close();
      }
    } catch (error) {
      if (!(error instanceof SqliteFailure)) throw error;
      if (error.code === 'SQLITE_BUSY') return inUse(file);
      // Over a damaged book a whole one may be written. Where there is no room for its last edits it stays as it is.
      if (error.code !== 'SQLITE_CORRUPT' && error.code !== 'SQLITE_NOTADB') throw error;
    }
  }
  for (const log of logsOf(file)) await rm(log, { force: true });
  return ok(true);
}

function inUse(file: string): Result<never> {
  return err(
    'book-locked',
    describePlace(file),
    'The book of this name is open, so nothing was written over it.',
    'Choose another name, or close that book first.',
  );
}
