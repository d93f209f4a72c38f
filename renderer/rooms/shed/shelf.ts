import type { Book } from '../../../core/book/index.ts';
import type { RecordOf } from '../../../core/edit/index.ts';
import type { Shelf } from '../../stores/index.ts';
import type { Column } from './column.tsx';
import type { Part } from './part.tsx';

/** How the records of one table of the book are shown and edited. */
export type ShelfPlan<Name extends Shelf> = {
  readonly shelf: Name;
  readonly title: string;
  /** What one record is called. */
  readonly one: string;
  /** What belongs on the shelf, for an empty one. */
  readonly about: string;
  /** Said above the table always. */
  readonly caution?: string;
  readonly columns: readonly Column<RecordOf<Name>>[];
  readonly parts: readonly Part<RecordOf<Name>>[];
  /** A new record, or why there can be none yet. */
  readonly create: (book: Book, id: string) => RecordOf<Name> | string;
};
