import { type Err, err } from '../../../core/base/index.ts';
import { describePlace } from './places.ts';

/** An error of the file system, told by its code. */
export type FileError = Error & { readonly code: string };

export function isFileError(error: unknown): error is FileError {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' && 'syscall' in error;
}

const FULL = ['ENOSPC', 'EDQUOT', 'EFBIG'];
const READ_CALLS = ['open', 'read', 'stat', 'lstat', 'access', 'scandir'];

/** What an error of the file system means to the user, with the file, its folder and a remedy. */
export function fileFailure(error: FileError, file: string): Err {
  const where = describePlace(file);
  if (error.code === 'ENOENT') {
    return err(
      'file-not-found',
      where,
      'The file is not there.',
      'Check the name and the folder; a disk or a shared folder may have to be connected first.',
    );
  }
  if (error.code === 'EISDIR') {
    return err('file-not-readable', where, 'This is a folder, not a file.', 'Choose a file inside it.');
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
    const reading = error.code !== 'EROFS' && READ_CALLS.includes((error as { syscall?: string }).syscall ?? '');
    return reading
      ? err(
          'file-not-readable',
          where,
          'You may not read this file.',
          'Ask its owner for leave, or copy it to a folder of yours.',
        )
      : err('file-not-writable', where, 'You may not write here.', 'Choose a folder of your own.');
  }
  return err(
    'file-not-readable',
    where,
    `The system could not use this file (${error.code}).`,
    'Check that the disk is connected, then try again.',
  );
}
