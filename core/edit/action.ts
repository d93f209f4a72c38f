import type { Result } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { AnyRecord, TableName } from './tables.ts';

/**
 * Adds a record, or replaces the one with the same id. A new record goes to `at`, or to the end. Refused with 'book-invalid' where
 * the record is not what the schema of its table asks for.
 */
export type PutAction = {
  readonly kind: 'put';
  readonly table: TableName;
  readonly record: AnyRecord;
  readonly at?: number;
  /** True to add even where the id is taken already; only undo asks for it, to give a faulty book back as it was. */
  readonly insert?: true;
  /** What the user did, "Change gate width"; made up from the record where it is absent. */
  readonly label?: string;
};

/** Takes a record out of its table. References to it stay and are named by the checks. */
export type RemoveAction = {
  readonly kind: 'remove';
  readonly table: TableName;
  readonly id: string;
  /** Its place, needed only where the id stands more than once. */
  readonly at?: number;
  readonly label?: string;
};

/** Moves a record to another place in its table, counted without it. */
export type MoveAction = {
  readonly kind: 'move';
  readonly table: TableName;
  readonly id: string;
  /** Its place, needed only where the id stands more than once. */
  readonly at?: number;
  readonly to: number;
};

/** The parts of a book that are no tables. `null` takes away what a book can be without. */
export type BookSettings = {
  readonly name?: string;
  readonly note?: string;
  readonly units?: Book['units'];
  readonly clock?: Book['clock'] | null;
  readonly dates?: Book['dates'] | null;
  readonly prices?: Book['prices'];
  readonly travel?: Book['travel'];
  readonly matrix?: Book['matrix'] | null;
  readonly roads?: Book['roads'] | null;
  readonly estimate?: Book['estimate'] | null;
  readonly overlays?: Book['overlays'] | null;
  readonly calendar?: Book['calendar'] | null;
  readonly siteOffsets?: Book['siteOffsets'] | null;
  readonly spread?: Book['spread'] | null;
  readonly firm?: Book['firm'] | null;
};

/** Sets parts of the book that are no tables; `label` is what the menu calls it where that is not the usual words. */
export type SetAction = { readonly kind: 'set'; readonly changes: BookSettings; readonly label?: string };

/** Several edits as one step: all of them, or none. */
export type SeveralAction = { readonly kind: 'several'; readonly label: string; readonly actions: readonly Action[] };

/** An edit of a book: a plain record that a screen dispatches, a host stores and undo replays. */
export type Action = PutAction | RemoveAction | MoveAction | SetAction | SeveralAction;

/** A book after an edit, the edit that takes it back, and what to call it in the menu. */
export type Applied = { readonly book: Book; readonly inverse: Action; readonly label: string };
/** The book after an edit, or why it cannot be made: the book is then as it was. */
export type ApplyResult = Result<Applied>;
