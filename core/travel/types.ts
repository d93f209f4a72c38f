import type { Position } from '../book/index.ts';

/** A place that a rig drives to or from. */
export type Place = { readonly id: string; readonly at: Position };

/** Where a travel figure comes from: an imported matrix, roads, or the straight-line estimate. */
export type TravelSource = 'matrix' | 'roads' | 'estimate';

/** Travel between all places, row-major [from * count + to]. Durations in whole seconds, distances in whole metres. */
export type TravelTable = {
  readonly places: readonly Place[];
  readonly durationSec: Int32Array;
  readonly distanceM: Int32Array;
  /** 1 where the pair's duration is an estimate, 0 where it comes from a matrix or from roads. */
  readonly estimated: Uint8Array;
  /** 1 where the pair's distance is an estimate: also where a matrix knows its duration only. */
  readonly distanceEstimated: Uint8Array;
  /** Pairs of different places whose duration comes from an imported matrix, and from roads. */
  readonly matrixPairs: number;
  readonly roadPairs: number;
};

/** One way between two places, seconds and metres; the distance is null where a source knows the duration only. */
export type Leg = { readonly durationSec: number; readonly distanceM: number | null };

/** The port that roads, matrices and estimates implement. */
export type TravelPort = {
  readonly source: Exclude<TravelSource, 'estimate'>;
  /** Seconds and metres between two places, whole numbers; null where this source knows nothing of the pair. */
  readonly between: (from: Place, to: Place) => Leg | null;
};
