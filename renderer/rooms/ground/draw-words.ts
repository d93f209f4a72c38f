import type { Draft } from '../../../core/sketch/index.ts';
import { cornersWanted, isPlace, propertyIdOf } from '../../../core/sketch/index.ts';
import { propertyOf } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';

const KINDS: Readonly<Record<Draft['purpose']['kind'], string>> = {
  zone: drawWords.words.zone,
  exclusion: drawWords.words.keptOut,
  gate: drawWords.words.gate,
  parking: drawWords.words.parkingPoint,
  'hose-stand': drawWords.words.hoseStand,
  hole: drawWords.words.hole,
  cut: drawWords.words.cut,
  'split-line': drawWords.words.splitLine,
  avoid: drawWords.words.avoid,
};

/** "Zone of 6 Teasel Lane", "New lawn". */
export function draftTitle({ purpose, newPropertyName }: Draft): string {
  if (newPropertyName !== undefined) return newPropertyName;
  if (purpose.kind === 'avoid') return purpose.name === '' ? KINDS.avoid : `${KINDS.avoid}: ${purpose.name}`;
  const kind = purpose.kind === 'exclusion' ? `${KINDS.exclusion}: ${purpose.what}` : KINDS[purpose.kind];
  return drawWords.words.of(kind, propertyOf(propertyIdOf(purpose))?.name ?? drawWords.words.goneLawn);
}

/** What to do next. */
export function draftAdvice(draft: Draft): string {
  const wanted = cornersWanted(draft);
  const { tool, base, corners } = draft;
  if (isPlace(draft.purpose)) return drawWords.words.showPlace;
  if (base !== undefined) return drawWords.words.cornersToDrag(corners.length);
  if (tool === 'circle') return corners.length === 0 ? drawWords.words.setMiddle : drawWords.words.setRim;
  if (tool === 'rectangle') {
    const next = [drawWords.words.setFirst, drawWords.words.setSideEnd, drawWords.words.setReach];
    return next[corners.length] ?? drawWords.words.corners(corners.length);
  }
  const more = wanted === 0 ? drawWords.words.finishAdvice : drawWords.words.moreNeeded(wanted);
  return `${drawWords.words.corners(corners.length)}; ${more}`;
}

/** "3 corners", for lists of what was set aside. */
export function asideWords(draft: Draft): string {
  return `${draftTitle(draft)}, ${drawWords.words.corners(draft.corners.length)}`;
}
