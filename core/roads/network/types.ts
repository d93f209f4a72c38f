import type { RoadMap } from '../types.ts';

/** A directed graph in rows: the links of node n are start[n] to start[n + 1]. */
export type Links = {
  readonly start: Uint32Array;
  readonly node: Uint32Array;
  readonly weight: Float64Array;
};

/**
 * Roads that one truck may use, with what they cost it. Nodes of the searches are arcs, that is edges in one direction, so that
 * turns can be forbidden and cost time; a link leads from the beginning of an arc to that of one that may follow. Weights are
 * those of search/weight.ts.
 */
export type RoadNetwork = {
  readonly map: RoadMap;
  /** Of the map, the settings and the factors. */
  readonly fingerprint: string;
  readonly drivesOn: 'right' | 'left';
  readonly arcEdge: Uint32Array;
  /** 1 where the arc runs against its edge. */
  readonly arcBackward: Uint8Array;
  readonly arcWeight: Float64Array;
  /** Tenths of a second of it that are waits at signals between its ends. */
  readonly arcWaitDs: Uint32Array;
  /** Place 2 x edge for forward and 2 x edge + 1 for backward; -1 where no truck may drive so. */
  readonly arcOfEdge: Int32Array;
  readonly next: Links;
  /** The same links from their ends. */
  readonly previous: Links;
  /** 1 for arcs of the largest part in which every arc can be reached from every other. */
  readonly isMain: Uint8Array;
};
