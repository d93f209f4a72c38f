import type { Position } from '../book/index.ts';
import { positionFault } from '../geometry/index.ts';
import type { Draft, DraftStep } from './draft.ts';
import type { Corners } from './types.ts';

/** The draft after a step, which can be taken back. A step that has no place in the draft leaves it as it is. */
export function applyDraft(draft: Draft, step: DraftStep): Draft {
  const done = perform(draft.corners, step);
  if (done === null) return draft;
  const last = draft.undo.at(-1);
  if (step.mergeKey !== undefined && last?.mergeKey === step.mergeKey && draft.redo.length === 0) {
    const undo = [...draft.undo.slice(0, -1), merged(draft.corners, last, step)];
    return { ...draft, corners: done.corners, undo };
  }
  return { ...draft, corners: done.corners, undo: [...draft.undo, keyed(done.inverse, step)], redo: [] };
}

/** The draft with its newest step taken back; the same draft where there is none. */
export function undoDraft(draft: Draft): Draft {
  const step = draft.undo.at(-1);
  if (step === undefined) return draft;
  const done = perform(draft.corners, step);
  const undo = draft.undo.slice(0, -1);
  if (done === null) return { ...draft, undo };
  return { ...draft, corners: done.corners, undo, redo: [...draft.redo, done.inverse] };
}

/** The draft with the step taken back last done once more; the same draft where there is none. */
export function redoDraft(draft: Draft): Draft {
  const step = draft.redo.at(-1);
  if (step === undefined) return draft;
  const done = perform(draft.corners, step);
  const redo = draft.redo.slice(0, -1);
  if (done === null) return { ...draft, redo };
  return { ...draft, corners: done.corners, undo: [...draft.undo, done.inverse], redo };
}

/** Ends merging: the next step is one of its own, whatever its key. For the end of a drag. */
export function endDraftMerging(draft: Draft): Draft {
  const last = draft.undo.at(-1);
  if (last?.mergeKey === undefined) return draft;
  const { mergeKey: _, ...sealed } = last;
  return { ...draft, undo: [...draft.undo.slice(0, -1), sealed] };
}

/** What takes back the newest step together with the one before it: where both move one corner, that corner's first place. */
function merged(corners: Corners, last: DraftStep, step: DraftStep): DraftStep {
  if (last.kind === 'replace') return last;
  if (last.kind === 'move' && step.kind === 'move' && last.index === step.index) return last;
  const before = perform(corners, last);
  return before === null ? last : keyed({ kind: 'replace', corners: before.corners }, last);
}

type Performed = { readonly corners: Corners; readonly inverse: DraftStep };

function perform(corners: Corners, step: DraftStep): Performed | null {
  switch (step.kind) {
    case 'add':
      return add(corners, step.at, step.index ?? corners.length);
    case 'move':
      return move(corners, step.index, step.to);
    case 'remove':
      return remove(corners, step.index);
    case 'replace':
      if (!step.corners.every(isPosition)) return null;
      return { corners: step.corners, inverse: { kind: 'replace', corners } };
  }
}

function add(corners: Corners, at: Position, index: number): Performed | null {
  if (index > corners.length || !isPosition(at)) return null;
  return { corners: corners.toSpliced(index, 0, at), inverse: { kind: 'remove', index } };
}

function move(corners: Corners, index: number, to: Position): Performed | null {
  const before = corners[index];
  if (before === undefined || !isPosition(to)) return null;
  return { corners: corners.with(index, to), inverse: { kind: 'move', index, to: before } };
}

function remove(corners: Corners, index: number): Performed | null {
  const before = corners[index];
  if (before === undefined) return null;
  return { corners: corners.toSpliced(index, 1), inverse: { kind: 'add', at: before, index } };
}

function isPosition(position: Position): boolean {
  return positionFault(position) === null;
}

function keyed(inverse: DraftStep, step: DraftStep): DraftStep {
  return step.mergeKey === undefined ? inverse : { ...inverse, mergeKey: step.mergeKey };
}
