import type { PassNote, PassNoteCode } from './types.ts';

/** Figures of a plan that notes are made of. */
type Found = {
  readonly swathCount: number;
  readonly trimCount: number;
  readonly handTrimSqM: number;
  readonly areaSqM: number;
  /** Ways that leave the ground. */
  readonly leaves: number;
  readonly isDownhillUnknown: boolean;
  readonly directionsCut: boolean;
  readonly orderCut: boolean;
};

/** More hand trim than this share of the ground is told, as is any plan without passes. */
const TELLING_SHARE = 0.01;

/** What a reader has to know about a plan, in words. */
export function notesOf(found: Found): readonly PassNote[] {
  const notes: PassNote[] = [];
  const tell = (code: PassNoteCode, message: string): void => {
    notes.push({ code, message });
  };
  const share = found.areaSqM > 0 ? found.handTrimSqM / found.areaSqM : 0;
  if (found.areaSqM > 0 && found.swathCount + found.trimCount === 0) {
    tell('swath-wider-than-ground', 'The swath fits nowhere on this ground; all of it is left to hand methods.');
  } else if (share > TELLING_SHARE) {
    tell('hand-trim-left', `The machine leaves ${(100 * share).toFixed(1)} % of the ground to hand methods.`);
  }
  if (found.leaves > 0) {
    tell('crosses-other-ground', `${found.leaves} of the ways between passes cross other ground.`);
  }
  if (found.isDownhillUnknown) {
    tell(
      'downhill-unknown',
      'Swaths are to run up and down here, but it is not known which way the ground falls: they run the quickest way.',
    );
  }
  if (found.directionsCut) {
    tell('angles-cut-short', 'The ground is large: not every direction was tried, the best so far is taken.');
  }
  if (found.orderCut) tell('order-cut-short', 'There are many cells: the best order so far is taken.');
  return notes;
}
