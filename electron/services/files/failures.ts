import { type Err, err } from '../../../core/base/index.ts';
import { describePlace } from './places.ts';

/** An error of the file system, told by its code. */
export type FileError = Error & { readonly code: string };

/** Whether something that was thrown comes from the file system. */
export function isFileError(error: unknown): error is FileError {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' && 'syscall' in error;
}

/** The code of a failure after a new file took the place of the old one: it is there, but the disk did not say that it stays. */
export const UNCONFIRMED = 'UNCONFIRMED';

/** Whether a write failed only after the new file was in its place; see `UNCONFIRMED`. */
export function isUnconfirmed(error: unknown): boolean {
  return isFileError(error) && error.code === UNCONFIRMED;
}

const FULL = ['ENOSPC', 'EDQUOT', 'EFBIG'];
const READ_CALLS = ['open', 'read', 'stat', 'lstat', 'access', 'scandir'];

/**
 * What an error of the file system means to the user: what happened, what was kept, and a remedy.
 *
 * @param use what was done with the file; absent, the system call tells
 */
export function fileFailure(error: FileError, file: string, use: 'read' | 'write' = callOf(error)): Err {
  const where = describePlace(file);
  if (isUnconfirmed(error)) {
    return err(
      'file-not-writable',
      where,
      'The file was written whole, but the disk did not confirm that it is kept.',
      'Check that the disk is connected and has room, then write it again.',
    );
  }
  if (error.code === 'ENOENT') {
    return err(
      'file-not-found',
      where,
      'The file is not there; nothing was changed.',
      'Check the name and the folder; a disk or a shared folder may have to be connected first.',
    );
  }
  if (error.code === 'EISDIR') {
    return err(
      'file-not-readable',
      where,
      'This is a folder, not a file; nothing was changed.',
      'Choose a file inside it.',
    );
  }
  if (FULL.includes(error.code)) {
    return err(
      'disk-full',
      where,
      'There is no room left on the disk; what was there before is unchanged.',
      'Make room on the disk or choose another place, then try again.',
    );
  }
  if (error.code === 'EACCES' || error.code === 'EPERM' || error.code === 'EROFS') {
    return use === 'read'
      ? err(
          'file-not-readable',
          where,
          'You may not read this file; nothing was changed.',
          'Ask its owner for leave, or copy it to a folder of yours.',
        )
      : err(
          'file-not-writable',
          where,
          'You may not write here; what was there before is unchanged.',
          'Choose a folder of your own.',
        );
  }
  return err(
    use === 'read' ? 'file-not-readable' : 'file-not-writable',
    where,
    `The system could not ${use} this file (${error.code}); nothing was changed.`,
    'Check that the disk is connected, then try again.',
  );
}

function callOf(error: FileError): 'read' | 'write' {
  if (error.code === 'EROFS') return 'write';
  return READ_CALLS.includes((error as { readonly syscall?: string }).syscall ?? '') ? 'read' : 'write';
}
