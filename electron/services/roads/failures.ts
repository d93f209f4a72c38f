import { type AppError, err, type Result } from '../../../core/base/index.ts';

export function importCancelled(where: string): Result<never> {
  const detail = 'The import was cancelled; the roads that were there before are unchanged.';
  return err('cancelled', where, detail, 'Choose the extract again when you are ready.');
}

export function roadsFault(where: string, detail: string): AppError {
  return {
    code: 'internal',
    where,
    detail: `The roads could not be used because of a fault in the program (${detail}).`,
    hint: 'Drive times are an estimate meanwhile. Report this with the log file.',
  };
}

export function tookTooMuch(where: string): AppError {
  return {
    code: 'file-too-large',
    where,
    detail: 'The roads took more memory than they may.',
    hint: 'Take an extract of your own counties only.',
  };
}

export function isOutOfMemory(error: Error): boolean {
  return 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}

export function noRoads(where: string): Result<never> {
  const detail = 'No roads have been imported beside this book.';
  return err('not-available', where, detail, 'Import an extract of a road map first.');
}
