import type { Property } from '../../../core/book/index.ts';
import { cornersWanted, isPlace } from '../../../core/sketch/index.ts';
import { type Box, createSnapFinder, type DrawEvents, type SnapFinder } from '../../map/index.ts';
import {
  chooseInBox,
  draftStep,
  dragDraft,
  finishDrawing,
  markCorner,
  nudgeParts,
  putDown,
  removeCorner,
  say,
  useBook,
  useCarry,
  useDraft,
  whyNotOnParts,
} from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { editedPart } from './draw-wish.ts';

const NO_PROPERTIES: readonly Property[] = [];

/** Snaps to every lawn of the open book but the outline that is being changed. */
export const snapToBook: SnapFinder = createSnapFinder(
  () => useBook.getState().open?.book.properties ?? NO_PROPERTIES,
  () => editedPart(useDraft.getState().draft),
);

/** What drawing on the map does to the draft. */
export const DRAW_EVENTS: DrawEvents = {
  onPoint: (at) => {
    if (useDraft.getState().draft === null && useCarry.getState().carry !== null) {
      putDown(at);
      return;
    }
    draftStep({ kind: 'add', at });
    const { draft } = useDraft.getState();
    if (draft === null) return;
    const ends = isPlace(draft.purpose) || draft.tool === 'rectangle' || draft.tool === 'circle';
    if (ends && cornersWanted(draft) === 0) finishDrawing();
    else say(drawWords.events.corner(draft.corners.length));
  },
  onFinish: () => {
    finishDrawing();
  },
  onMoveCorner: (index, to) => draftStep({ kind: 'move', index, to }),
  onInsertCorner: (index, at) => draftStep({ kind: 'add', index, at }),
  onRemoveCorner: removeCorner,
  onMarkCorner: markCorner,
  onDragging: dragDraft,
  onNudge: (east, north) => {
    if (whyNotOnParts() !== null) return false;
    nudgeParts(east, north);
    return true;
  },
  onBox: (box: Box, add) => chooseInBox(box, add),
};
