import { readFile, stat } from 'node:fs/promises';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { fileFailure, isFileError } from './failures.ts';
import { describePlace } from './places.ts';

/** Files beyond this are refused: 64 MiB. */
export const LARGEST_FILE = 64 * 1024 * 1024;

/**
 * Reads a text file as UTF-8 (a byte order mark is dropped). Fails with 'file-too-large' beyond `LARGEST_FILE`,
 * 'format-invalid' where it is no text, and as the file system has it.
 */
export async function readText(file: string): Promise<Result<string>> {
  try {
    const { size } = await stat(file);
    if (size > LARGEST_FILE) return tooLarge(describePlace(file), size);
    return decodeText(await readFile(file), describePlace(file));
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

/** The failure for a file of so many bytes, which is beyond `LARGEST_FILE`. */
export function tooLarge(where: string, size: number): Result<never> {
  const mebibytes = (size / 1024 / 1024).toFixed(0);
  return err('file-too-large', where, `The file has ${mebibytes} MiB; at most 64 can be read.`, 'Split it into parts.');
}

/** Bytes as UTF-8 text; fails with 'format-invalid' when they are no text. */
export function decodeText(bytes: Uint8Array, where: string): Result<string> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return err('format-invalid', where, 'This is not a text file in UTF-8.', 'Save it as UTF-8 text and try again.');
  }
}
