import type { Action } from '../../core/edit/index.ts';

/** One step that can be taken back: how to undo it, and how it is called. */
export type Step = { readonly label: string; readonly action: Action };

/** Steps to take back and steps to do again, newest last. */
export type History = { readonly undo: readonly Step[]; readonly redo: readonly Step[] };

export const NO_HISTORY: History = { undo: [], redo: [] };
const MOST_STEPS = 200;

/** A new edit: it can be taken back, and what was undone before is gone. */
export function remember(history: History, step: Step): History {
  return { undo: [...history.undo, step].slice(-MOST_STEPS), redo: [] };
}

/** After the newest step was taken back; `again` does it once more. */
export function stepBack(history: History, again: Step): History {
  return { undo: history.undo.slice(0, -1), redo: [...history.redo, again] };
}

/** After the newest undone step was done again; `back` takes it back once more. */
export function stepForward(history: History, back: Step): History {
  return { undo: [...history.undo, back], redo: history.redo.slice(0, -1) };
}
