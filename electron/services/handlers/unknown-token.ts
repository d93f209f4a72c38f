import { err, type Result } from '../../../core/base/index.ts';

/** The failure of a request that names a file which the host did not give out. */
export function unknownToken(): Result<never> {
  return err('not-allowed', 'file token', 'The host did not give out this file.', 'Choose the file again.');
}
