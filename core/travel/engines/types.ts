import type { Position } from '../../book/index.ts';

/** A program with an HTTP table service that the user runs: OSRM's API v1 ("table"), or Valhalla's "sources_to_targets". */
export type EngineKind = 'osrm' | 'valhalla';
/** The program that the user named, and where it listens. */
export type Engine = {
  readonly kind: EngineKind;
  /** Beginning of its address, without a slash at the end: http://127.0.0.1:5000 */
  readonly address: string;
};

/** A part of the table: rows and columns by their numbers among the places. */
export type Block = { readonly sources: readonly number[]; readonly targets: readonly number[] };

/** A block as a request. */
export type EngineRequest = {
  readonly url: string;
  /** JSON to be sent; null for a request without a body. */
  readonly body: string | null;
};

/** What an engine says to a block, checked. */
export type EngineCells = {
  /** Row-major over the block, whole seconds; -1 where the engine knows no way. */
  readonly durationSec: Int32Array;
  readonly distanceM: Int32Array;
  /** By the numbers of the places: how far off the road they were taken from, where that is more than allowed. metres */
  readonly offRoadM: ReadonlyMap<number, number>;
};

/** What a block was asked with. */
export type Asked = {
  readonly at: readonly Position[];
  readonly block: Block;
  /** A place farther from any road than this is off the road, m. */
  readonly mostM: number;
};
