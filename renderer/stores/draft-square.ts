import { create } from 'zustand';
import { squareUp } from '../../core/sketch/index.ts';
import { formatNumber } from '../format/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { draftStep, useDraft } from './draft.ts';
import { say, showError } from './notices.ts';

/** Squares up what is being drawn, as one step. */
export function squareDraft(): void {
  const { draft } = useDraft.getState();
  if (draft === null) return;
  const squared = squareUp(draft.corners);
  if (!squared.ok) {
    showError(squared.error);
    return;
  }
  draftStep({ kind: 'replace', corners: squared.value.corners });
  say(draftsWords.draftSquare.squaredUp(formatNumber(squared.value.movedFt, 2)));
}

/** Counts the wishes to type a distance for the edge; the panel answers by taking the focus. */
export const useOffsetWish = create<{ readonly count: number }>(() => ({ count: 0 }));

export function offerOffset(): void {
  useOffsetWish.setState(({ count }) => ({ count: count + 1 }));
}
