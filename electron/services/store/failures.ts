import { type Err, err, ok, type Result } from '../../../core/base/index.ts';
import { describePlace, fileFailure, isFileError } from '../files/index.ts';
import { SqliteFailure } from './connection.ts';

/** What a failure of SQLite means for the book in this file; null where it is a fault of the program. */
export function storeFailure(failure: SqliteFailure, file: string): Err | null {
  const where = describePlace(file);
  switch (failure.code) {
    case 'SQLITE_BUSY':
    case 'SQLITE_LOCKED':
      return err(
        'book-locked',
        where,
        'Another program has this book open; nothing was changed.',
        'Close the book in the other window or program, then open it again here.',
      );
    case 'SQLITE_READONLY':
    case 'SQLITE_PERM':
      return err(
        'book-read-only',
        where,
        'The book file cannot be written to, so nothing was stored; the book is as it was before.',
        'Save a copy of the book in a folder of your own and go on with the copy.',
      );
    case 'SQLITE_FULL':
      return err(
        'disk-full',
        where,
        'There is no room left on the disk, so the edit was not stored.',
        'Make room on the disk or save a copy of the book elsewhere, then save again.',
      );
    case 'SQLITE_CORRUPT':
    case 'SQLITE_NOTADB':
      return damaged(file, failure.message);
    case 'SQLITE_CANTOPEN':
      return err(
        'file-not-readable',
        where,
        'The book file could not be opened; nothing was changed.',
        'Check that the file is there and that you may read and write it and its folder.',
      );
    case 'SQLITE_IOERR':
      return err(
        'file-not-writable',
        where,
        'The disk reported an error while the book was being read or written; what was stored before is unchanged.',
        'Check that the disk is still connected, then save a copy of the book on another disk.',
      );
    default:
      return null;
  }
}

export function damaged(file: string, detail: string): Err {
  return err(
    'book-damaged',
    describePlace(file),
    `The book file is damaged (${detail}); nothing was written to it.`,
    'Keep this file, and open a copy or a backup of the book.',
  );
}

/** A copy that lacks something is no copy. */
export function notCopied(file: string, detail: string): Err {
  return err(
    'file-not-writable',
    describePlace(file),
    `The copy was not whole (${detail}), so it was thrown away; the book is unchanged.`,
    'Check the disk, then make the copy again.',
  );
}

/** Runs the work; a failure of SQLite or of the file system becomes a value, anything else stays an exception. */
export async function guardStore<T>(file: string, work: () => Promise<Result<T> | T>): Promise<Result<T>> {
  try {
    const outcome = await work();
    return isResult(outcome) ? outcome : ok(outcome);
  } catch (error) {
    const failure =
      error instanceof SqliteFailure ? storeFailure(error, file) : isFileError(error) ? fileFailure(error, file) : null;
    if (failure === null) throw error;
    return failure;
  }
}

function isResult<T>(outcome: Result<T> | T): outcome is Result<T> {
  return (
    typeof outcome === 'object' &&
    outcome !== null &&
    'ok' in outcome &&
    (('value' in outcome && outcome.ok === true) || ('error' in outcome && outcome.ok === false))
  );
}
