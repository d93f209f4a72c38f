import type { Result } from '../../core/base/index.ts';
import type { Draft } from '../../core/sketch/index.ts';
import { cornersWanted, crossingsOf, draftOutline, finishDraft, propertyIdOf } from '../../core/sketch/index.ts';
import { drawWords } from '../texts/ground/index.ts';
import { commandsWords } from '../texts/index.ts';
import { edit, useBook } from './book.ts';
import { changeDraft, useDraft } from './draft.ts';
import { chooseParts, noteFinished, type PartRef } from './draft-parts.ts';
import { showError, showNews } from './notices.ts';
import { selectProperty } from './selection.ts';

/** Why the outline that is drawn cannot be finished as it stands. */
export function whyNotFinish(): string | null {
  const { draft } = useDraft.getState();
  if (draft === null) return commandsWords.drawing.nothingDrawn;
  const wanted = cornersWanted(draft);
  if (wanted > 0) return drawWords.bar.setMore(wanted);
  return isCrossed(draft) ? drawWords.bar.uncross : null;
}

/** Asked for with every step of everything that is drawn; reckoned once for each. */
const crossed = new WeakMap<Draft, boolean>();

function isCrossed(draft: Draft): boolean {
  const known = crossed.get(draft) ?? hasCrossings(draft, draftOutline(draft));
  crossed.set(draft, known);
  return known;
}

/** Whether sides cross, of the draft or of the shape that it is being dragged to. */
export function hasCrossings(draft: Draft, shape: ReturnType<typeof draftOutline>): boolean {
  return crossingsOf(shape, draft.base !== undefined || shape !== draft.corners).length > 0;
}

/** Finishes what is drawn: it goes into the book as one step, or stays with the reason. */
export function finishDrawing(): Result<{ readonly label: string }> | null {
  const { draft } = useDraft.getState();
  const { open } = useBook.getState();
  if (draft === null || open === null) return null;
  const propertyId = propertyIdOf(draft.purpose);
  const isNew = !open.book.properties.some((each) => each.id === propertyId);
  const action = finishDraft(draft, open.book);
  const done = action.ok ? edit(action.value) : action;
  if (!done.ok) {
    showError(done.error);
    return done;
  }
  changeDraft({ draft: null, marked: null, dragging: null });
  chooseWhatWasDrawn(draft, isNew);
  showNews(done.value.label, true);
  return done;
}

function chooseWhatWasDrawn(draft: Draft, isNew: boolean): void {
  const { purpose, base } = draft;
  if (purpose.kind === 'avoid') return;
  const part = drawnPart(draft);
  if (part !== null && base === undefined) noteFinished(part, isNew);
  else if (part !== null) chooseParts([part]);
  else if ('zoneId' in purpose) chooseParts([{ propertyId: purpose.propertyId, kind: 'zone', partId: purpose.zoneId }]);
  else selectProperty(purpose.propertyId);
}

/** What is new, or has new corners; null where the zone that was worked on is what matters. */
export function drawnPart({ purpose }: Draft): PartRef | null {
  switch (purpose.kind) {
    case 'zone':
      return { propertyId: purpose.propertyId, kind: 'zone', partId: purpose.zoneId };
    case 'exclusion':
      return { propertyId: purpose.propertyId, kind: 'exclusion', partId: purpose.exclusionId };
    case 'gate':
      return { propertyId: purpose.propertyId, kind: 'gate', partId: purpose.gateId };
    default:
      return null;
  }
}
