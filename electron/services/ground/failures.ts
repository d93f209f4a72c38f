import { err, type Result } from '../../../core/base/index.ts';

const MEBIBYTE = 1024 * 1024;

export function textTooLarge(where: string, size: number): Result<never> {
  const hint = 'Cut it into parts, or convert it to a GeoPackage, which may be larger.';
  return err('file-too-large', where, `The file has ${mebibytes(size)} MiB; of a text, 128 can be read.`, hint);
}

export function fileTooLarge(where: string, size: number, most: number): Result<never> {
  const detail = `The file has ${mebibytes(size)} MiB; at most ${mebibytes(most)} can be read.`;
  return err('file-too-large', where, detail, 'Cut it into parts, or export the ground that you need only.');
}

export function tookTooLong(where: string, limitMs: number): Result<never> {
  const detail = `Reading took longer than ${Math.round(limitMs / 1000)} s and was ended.`;
  const hint = 'The file is damaged, or too large for this machine. Export it again, or cut it into parts.';
  return err('file-not-readable', where, detail, hint);
}

export function tookTooMuch(where: string): Result<never> {
  const detail = 'Reading the file took more memory than it may.';
  return err('file-too-large', where, detail, 'Cut it into parts, or export the ground that you need only.');
}

export function readingCancelled(where: string): Result<never> {
  return err('cancelled', where, 'Reading was cancelled.', 'Choose the file again when you are ready.');
}

export function readingFault(where: string, detail: string): Result<never> {
  const hint = 'Nothing was changed. Report this with the log file, and try to export the file in another format.';
  return err('internal', where, `Reading stopped because of a fault in the program (${detail}).`, hint);
}

function mebibytes(size: number): string {
  return (size / MEBIBYTE).toFixed(0);
}
