import type { AreaGeometry } from '../book/index.ts';
import type { PlacedLeg } from './on-outline.ts';
import type { MarkUse, PassNote } from './types.ts';

/** One stretch of the way, with what a reader wants to know of it. */
export type PictureLeg = PlacedLeg & {
  readonly lengthFt: number;
  /** Ground that the material goes over, ft2. */
  readonly coveredSqFt: number;
  /** Minutes from the beginning of the work to the beginning of this stretch, its turn included. */
  readonly fromMinutes: number;
  readonly minutes: number;
};

/** Passes over a zone to be looked at: lines, ground gone over twice, ground left, and figures. */
export type PassPicture = {
  readonly legs: readonly PictureLeg[];
  readonly overlap: AreaGeometry;
  readonly handTrim: AreaGeometry;
  readonly areaSqFt: number;
  readonly coveredSqFt: number;
  readonly handTrimSqFt: number;
  readonly minutes: number;
  readonly swathCount: number;
  readonly trimCount: number;
  readonly cornerCount: number;
  /** Way with something coming out, and without. */
  readonly sprayedFt: number;
  readonly unsprayedFt: number;
  /** Covered beyond the ground that the machine treats, as a share of the zone. */
  readonly overlapShare: number;
  readonly missedShare: number;
  /** Rate on the ground that is treated as a multiple of one pass: on average, and at the worst place. */
  readonly averagePasses: number;
  readonly worstPasses: number;
  /** Direction of the swaths, clockwise from north in [0, 180); null without swaths. */
  readonly bearingDeg: number | null;
  readonly mark: MarkUse | null;
  readonly notes: readonly PassNote[];
};
