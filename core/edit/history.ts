import type { Action } from './action.ts';

/** One step that can be taken back. */
export type Step = {
  /** What the user did: "Change gate width". */
  readonly label: string;
  /** Undoes the step, or does it again, when it is applied. */
  readonly action: Action;
  /** Steps that follow each other with the same key are one step: typing in one field, dragging one corner. */
  readonly mergeKey?: string;
};

/**
 * Steps to take back and steps to do again, newest last. It knows nothing of selections and views, so clicking about loses
 * nothing of it.
 */
export type History = { readonly undo: readonly Step[]; readonly redo: readonly Step[] };

/** Nothing to take back and nothing to do again. */
export const NO_HISTORY: History = { undo: [], redo: [] };
/** Older steps are forgotten. */
export const MOST_STEPS = 200;

/** A new edit, `step.action` being its inverse: it can be taken back, and what was undone before is gone. */
export function remember(history: History, step: Step): History {
  const last = history.undo.at(-1);
  const merges = last?.mergeKey !== undefined && last.mergeKey === step.mergeKey && history.redo.length === 0;
  if (!merges) return { undo: [...history.undo, step].slice(-MOST_STEPS), redo: [] };
  return { undo: [...history.undo.slice(0, -1), merged(last, step)], redo: [] };
}

/** Ends merging: what comes next is a step of its own, whatever its key. For leaving a field or ending a drag. */
export function endMerging(history: History): History {
  const last = history.undo.at(-1);
  if (last?.mergeKey === undefined) return history;
  const { mergeKey: _, ...sealed } = last;
  return { ...history, undo: [...history.undo.slice(0, -1), sealed] };
}

/** After the newest step was taken back; `again` does it once more. */
export function stepBack(history: History, again: Step): History {
  return { undo: history.undo.slice(0, -1), redo: [...history.redo, again] };
}

/** After the newest undone step was done again; `back` takes it back once more. */
export function stepForward(history: History, back: Step): History {
  return { undo: [...history.undo, back], redo: history.redo.slice(0, -1) };
}

/** Taking the merged step back is taking the newer part back, then the older one. */
function merged(older: Step, newer: Step): Step {
  if (replacesSame(older.action, newer.action)) return { ...newer, action: older.action };
  const parts = [...partsOf(newer.action), ...partsOf(older.action)];
  return { ...newer, action: { kind: 'several', label: newer.label, actions: parts } };
}

/** Two inverses that each put one and the same record back: the older one alone gives the oldest state. */
function replacesSame(older: Action, newer: Action): boolean {
  if (older.kind !== 'put' || newer.kind !== 'put' || older.insert === true || newer.insert === true) return false;
  return older.table === newer.table && older.record.id === newer.record.id && older.at === newer.at;
}

function partsOf(action: Action): readonly Action[] {
  return action.kind === 'several' ? action.actions : [action];
}
