import type { Draft } from '../../../core/sketch/index.ts';
import { cornersWanted, isPlace, propertyIdOf } from '../../../core/sketch/index.ts';
import { counted } from '../../format/index.ts';
import { propertyOf } from '../../stores/index.ts';

const KINDS: Readonly<Record<Draft['purpose']['kind'], string>> = {
  zone: 'Zone',
  exclusion: 'Kept out',
  gate: 'Gate',
  parking: 'Parking point',
  'hose-stand': 'Hose stand',
  hole: 'Hole',
  cut: 'Piece to cut off',
  'split-line': 'Line to split along',
  avoid: 'Area to drive round',
};

/** "Zone of 6 Teasel Lane", "New lawn". */
export function draftTitle({ purpose, newPropertyName }: Draft): string {
  if (newPropertyName !== undefined) return newPropertyName;
  if (purpose.kind === 'avoid') return purpose.name === '' ? KINDS.avoid : `${KINDS.avoid}: ${purpose.name}`;
  const kind = purpose.kind === 'exclusion' ? `${KINDS.exclusion}: ${purpose.what}` : KINDS[purpose.kind];
  return `${kind} of ${propertyOf(propertyIdOf(purpose))?.name ?? 'a lawn that is gone'}`;
}

/** What to do next. */
export function draftAdvice(draft: Draft): string {
  const wanted = cornersWanted(draft);
  const { tool, base, corners } = draft;
  if (isPlace(draft.purpose)) return 'Show the place';
  if (base !== undefined) return `${counted(corners.length, 'corner')} to drag, or Enter takes one up`;
  if (tool === 'circle') return corners.length === 0 ? 'Set the middle' : 'Set a point on the rim';
  if (tool === 'rectangle') {
    const next = ['Set the first corner', 'Set the end of the first side', 'Set how far it reaches'];
    return next[corners.length] ?? counted(corners.length, 'corner');
  }
  const more = wanted === 0 ? 'Enter or double click finishes' : `${wanted} more needed`;
  return `${counted(corners.length, 'corner')}; ${more}`;
}

/** "3 corners", for lists of what was set aside. */
export function asideWords(draft: Draft): string {
  return `${draftTitle(draft)}, ${counted(draft.corners.length, 'corner')}`;
}
