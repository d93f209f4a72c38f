import type { Progress, StopSignal } from '../../base/index.ts';

/**
 * The bytes of an extract: all of them, or a way to read them from the beginning, piece by piece. A file is read twice (first
 * for its roads, then for the nodes they need), so that memory holds the roads alone.
 */
export type RoadSource = Uint8Array | (() => AsyncIterable<Uint8Array>);

/** What reading an extract needs beside its bytes. */
export type ReadRoadsOptions = {
  /** Name of the file, for messages. */
  readonly where: string;
  /** Bytes of the file where it is read by pieces, for progress. */
  readonly totalBytes?: number;
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};
