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
export type History = {
    readonly undo: readonly Step[];
    readonly redo: readonly Step[];
};
export declare const NO_HISTORY: History;
/** Older steps are forgotten. */
export declare const MOST_STEPS = 200;
/** A new edit, `step.action` being its inverse: it can be taken back, and what was undone before is gone. */
export declare function remember(history: History, step: Step): History;
/** Ends merging: what comes next is a step of its own, whatever its key. For leaving a field or ending a drag. */
export declare function endMerging(history: History): History;
/** After the newest step was taken back; `again` does it once more. */
export declare function stepBack(history: History, again: Step): History;
/** After the newest undone step was done again; `back` takes it back once more. */
export declare function stepForward(history: History, back: Step): History;
