import { open, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { describePlace, fileFailure, folderMissing, isFileError } from '../../services/files/index.ts';

const HEAD_BYTES = 4096;

/**
 * Whether a file that was named for output may be written: it is not there yet, is empty, or holds an earlier output of the
 * same kind. Anything else stays as it is, so that a slip of the pen costs no book. A folder that is missing is an error here
 * already, before any work is done.
 *
 * @param looksLike recognises an earlier output by its first 4,096 bytes
 */
export async function mayWrite(file: string, looksLike: RegExp, kind: string): Promise<Result<true>> {
  const head = await firstText(file);
  if (!head.ok) return head;
  if (head.value === null || head.value === '' || looksLike.test(head.value)) return ok(true);
  return err(
    'not-allowed',
    describePlace(file),
    `There is a file of this name already, and it is no ${kind}; it was left as it is.`,
    `Give another name, or remove that file first.`,
  );
}

/** The beginning of a file; null where there is none. */
async function firstText(file: string): Promise<Result<string | null>> {
  try {
    const handle = await open(path.resolve(file), 'r');
    try {
      const bytes = Buffer.alloc(HEAD_BYTES);
      const { bytesRead } = await handle.read(bytes, 0, HEAD_BYTES, 0);
      return ok(bytes.toString('utf8', 0, bytesRead));
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    if (error.code !== 'ENOENT') return fileFailure(error, file);
    const folder = await stat(path.dirname(path.resolve(file))).catch(() => null);
    return folder === null ? folderMissing(file) : ok(null);
  }
}
