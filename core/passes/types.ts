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
  /** Widths of boom sections that are shut one by one over treated ground, left to right, ft; absent: the swath is one. */
  readonly sectionsFt?: readonly number[];
  /** Side on which the spray is shielded: it faces the edge in trim passes. */
  readonly shieldedSide?: 'left' | 'right';
  /** Seconds for changing from one swath to the next, besides the way itself. */
  /** Drives out the corners of trim passes, straight on to the edge and back; absent: it turns on the spot there. */
  readonly squareCorners?: boolean;
  readonly turnSec: number;
  readonly speedMph: number;
  /** Speed with nothing coming out, mph; absent: the working speed. */
  readonly transitMph?: number;
  /** Absent: nothing marks where the last swath was. */
  readonly mark?: PassMark;
};

/** A marker and how much of it is used for 1,000 ft that are marked, fl oz: by foam the straight swaths, by dye all that is sprayed. */
export type PassMark = { readonly what: 'foam' | 'dye'; readonly flOzPer1000Ft: number };

/** What of passes is fixed before they are laid. */
export type PassOptions = {
  /** Direction of the swaths, degrees anticlockwise from east, where the user has fixed it. */
  readonly angleDeg?: number;
  /** True where swaths are to run up and down but nobody knows which way the ground falls: the plan says so. */
  readonly isDownhillUnknown?: boolean;
  /** Ground round which the ways between separate parts lead, in the plane of the region: buildings, beds, water. */
  readonly obstacles?: Region;
};

/** A head in metres and seconds. */
export type Gauge = {
  readonly swathM: number;
  readonly overlapM: number;
  readonly trimSwathM: number;
  readonly trimPasses: number;
  /** From left to right, adding up to the swath; null where the swath is shut as a whole. */
  readonly sectionsM: readonly number[] | null;
  readonly shieldedSide: 'left' | 'right' | null;
  readonly squareCorners: boolean;
  readonly turnSec: number;
  readonly metresPerSec: number;
  /** With nothing coming out. */
  readonly transitMetresPerSec: number;
  readonly mark: PassMark | null;
};

/** Where a section is open along a swath: metres from the beginning of the swath, and sections counted from the left. */
export type OpenSection = { readonly section: number; readonly fromM: number; readonly toM: number };

/** One stretch of the way: a trim pass, a straight run into a corner of it, a straight swath, or a move with nothing coming out. */
export type Leg = {
  readonly kind: 'trim' | 'corner' | 'swath' | 'transit';
  /** Line of the machine's middle, metres in the plane of the region; a trim pass ends where it began, unless it is broken off. */
  readonly points: readonly PlanePoint[];
  /** Width treated, metres; 0 for a transit. */
  readonly widthM: number;
  /** Area that comes out, overlap included, m2. */
  readonly appliedSqM: number;
  /** Of a trim pass: it is taken up again where it was broken off for a run into a corner. */
  readonly goesOn?: true;
  /** Of a swath with sections: where each is open. */
  readonly open?: readonly OpenSection[];
};

/** What has to be said of passes. */
export type PassNoteCode =
  | 'swath-wider-than-ground'
  | 'hand-trim-left'
  | 'crosses-other-ground'
  | 'downhill-unknown'
  | 'angles-cut-short'
  | 'order-cut-short';

/** Something to be said of passes, in words for people. */
export type PassNote = { readonly code: PassNoteCode; readonly message: string };

/** A marker, the way that it marks (metres), and how much of it that takes (fluid ounces). */
export type MarkUse = { readonly what: PassMark['what']; readonly markedM: number; readonly flOz: number };

/** A way over some ground and what comes of it. Shares are of the area of the region, on the map. */
export type PassPlan = {
  readonly path: readonly Leg[];
  /** Straight swaths; trim passes are counted apart. */
  readonly swathCount: number;
  readonly trimCount: number;
  /** Straight runs into corners of trim passes. */
  readonly cornerCount: number;
  readonly turnCount: number;
  readonly sprayedM: number;
  /** Of `sprayedM` the straight swaths. */
  readonly swathM: number;
  /** What is used to show where the last swath was; null where nothing is. */
  readonly mark: MarkUse | null;
  readonly unsprayedM: number;
  readonly minutes: number;
  readonly areaSqM: number;
  /** Distance times open width, summed: what empties the tank, overlap included. */
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
