import type { PlanePoint, Region } from '../geometry/index.ts';

/** What passes are planned for: a head of a machine and how it is driven. */
export type PassHead = {
  /** Width that one swath treats, ft. */
  readonly swathFt: number;
  /** How much neighbouring swaths share at least, ft. */
  readonly overlapFt: number;
  /** Passes along the edge and round every obstacle before the parallel swaths. */
  readonly trimPasses: number;
  /** Width of a trim pass, ft, where it is not the swath: a boom folded in, or a trim nozzle. */
  readonly trimSwathFt?: number;
  /** Seconds for changing from one swath to the next, besides the way itself. */
  readonly turnSec: number;
  readonly speedMph: number;
};

export type PassOptions = {
  /** Direction of the swaths, degrees anticlockwise from east, where the user has fixed it. */
  readonly angleDeg?: number;
};

/** A head in metres and seconds. */
export type Gauge = {
  readonly swathM: number;
  readonly overlapM: number;
  readonly trimSwathM: number;
  readonly trimPasses: number;
  readonly turnSec: number;
  readonly metresPerSec: number;
};

/** One stretch of the way: a closed trim pass, a straight swath, or a move with nothing coming out. */
export type Leg = {
  readonly kind: 'trim' | 'swath' | 'transit';
  /** Line of the machine's middle, metres in the plane of the region; a trim pass ends where it began. */
  readonly points: readonly PlanePoint[];
  /** Width treated, metres; 0 for a transit. */
  readonly widthM: number;
};

export type PassNoteCode =
  | 'swath-wider-than-ground'
  | 'hand-trim-left'
  | 'crosses-other-ground'
  | 'angles-cut-short'
  | 'order-cut-short';

export type PassNote = { readonly code: PassNoteCode; readonly message: string };

/** A way over some ground and what comes of it. Shares are of the area of the region, on the map. */
export type PassPlan = {
  readonly path: readonly Leg[];
  /** Straight swaths; trim passes are counted apart. */
  readonly swathCount: number;
  readonly trimCount: number;
  readonly turnCount: number;
  readonly sprayedM: number;
  readonly unsprayedM: number;
  readonly minutes: number;
  readonly areaSqM: number;
  /** Distance times width, summed: what empties the tank, overlap included. */
  readonly appliedSqM: number;
  readonly overlapShare: number;
  readonly missedShare: number;
  readonly offTargetShare: number;
  /** Ground that the machine leaves: exactly what is missed. */
  readonly handTrim: Region;
  readonly handTrimSqM: number;
  /** Direction of the swaths of the largest piece, degrees anticlockwise from east in [0, 180); null without swaths. */
  readonly angleDeg: number | null;
  readonly notes: readonly PassNote[];
};
