import { polygonsOf } from '../../core/geometry/index.ts';
import type { Draft, RingPlace } from '../../core/sketch/index.ts';
import { propertyIdOf, removeHole } from '../../core/sketch/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { edit } from './book.ts';
import { changeDraft, useDraft } from './draft.ts';
import { drawnPart, finishDrawing } from './draft-finish.ts';
import { withChanged } from './draft-operations.ts';
import { chooseParts, partName, propertyOf } from './draft-parts.ts';
import { editCorners } from './draft-start.ts';
import { showError, showNews } from './notices.ts';

/** One ring of the outline that is edited, as it is offered. */
export type RingChoice = { readonly place: RingPlace; readonly name: string };

/** Every ring of the edited outline: its parts, and the holes of each. */
export function ringsOf({ base }: Draft): readonly RingChoice[] {
  if (base === undefined) return [];
  const polygons = polygonsOf(base.geometry);
  return polygons.flatMap((rings, polygon) =>
    rings.map((_, ring) => {
      const part = polygons.length === 1 ? '' : draftsWords.draftRing.part(polygon + 1);
      return {
        place: { polygon, ring },
        name: `${part}${ring === 0 ? draftsWords.draftRing.outline : draftsWords.draftRing.hole(ring)}`,
      };
    }),
  );
}

/** Goes on with another ring of the same outline; what was changed of this one is put into the book first. */
export function editRing(place: RingPlace): void {
  const { draft } = useDraft.getState();
  if (draft?.base === undefined) return;
  if (draft.undo.length > 0 && finishDrawing()?.ok !== true) return;
  changeDraft({ draft: null, marked: null });
  editCorners(place);
}

/** Fills the hole whose corners are edited: it is turf again. */
export function fillHole(): void {
  const { draft } = useDraft.getState();
  const property = propertyOf(draft === null ? null : propertyIdOf(draft.purpose));
  const part = draft === null ? null : drawnPart(draft);
  if (draft?.base === undefined || property === null || part === null) return;
  const { place } = draft.base;
  const filled = withChanged(property, [part], (geometry) => removeHole(geometry, place));
  const label = draftsWords.draftRing.fillHole(partName(property, part));
  const done = filled.ok ? edit({ kind: 'put', table: 'properties', record: filled.value, label }) : filled;
  if (!done.ok) {
    showError(done.error);
    return;
  }
  changeDraft({ draft: null, marked: null, dragging: null });
  chooseParts([part]);
  showNews(label, true);
}
