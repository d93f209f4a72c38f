import { err, type Result } from '../base/index.ts';
import type { GroundReadOptions } from './types.ts';

/** Counts what a reader takes in, against the limits of the reading; asks whether to stop, and tells how far it is. */
export type Tally = {
  /** Counts one record with its positions. Null while reading may go on; else `file-too-large` or `cancelled`. */
  readonly add: (positions: number) => Result<never> | null;
};

/** How many records are read between two looks at the stop signal. */
const LOOK_EVERY = 200;

/**
 * @param where the file, for errors
 * @param total how many records there are, where that is known; 0 where it is not
 */
export function createTally({ limits, signal, onProgress }: GroundReadOptions, where: string, total: number): Tally {
  let records = 0;
  let corners = 0;
  return {
    add: (positions) => {
      records += 1;
      corners += positions;
      if (records > limits.features) return tooMany(where, 'records', limits.features);
      if (corners > limits.positions) return tooMany(where, 'corners', limits.positions);
      if (records % LOOK_EVERY !== 0) return null;
      if (signal?.stopped() === true) return cancelled(where);
      onProgress?.({ step: 'Reading', done: records, total: Math.max(total, records), bestSoFar: '' });
      return null;
    },
  };
}

function tooMany(where: string, what: string, most: number): Result<never> {
  const detail = `The file holds more than ${most.toLocaleString('en-US')} ${what}.`;
  return err('file-too-large', where, detail, 'Cut it into parts, or export the ground that you need only.');
}

export function cancelled(where: string): Result<never> {
  return err('cancelled', where, 'Reading was cancelled.', 'Choose the file again when you are ready.');
}
