import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, MoveAction } from './action.ts';
import { RECORD_NAMES, recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyMove(book: Book, action: MoveAction): ApplyResult {
  const { table, id } = action;
  const records = recordsOf(book, table);
  const from = records.findIndex((each) => each.id === id);
  const record = records[from];
  if (record === undefined) {
    const what = RECORD_NAMES[table];
    return err(
      'reference-missing',
      `${what} ${id}`,
      `The book has no such ${what}.`,
      'It may have been removed meanwhile.',
    );
  }
  const to = Math.max(0, Math.min(action.to, records.length - 1));
  const after = withRecords(book, table, records.toSpliced(from, 1).toSpliced(to, 0, record));
  return ok({
    book: after,
    inverse: { kind: 'move', table, id, to: from },
    label: `Move ${recordLabel(table, record)}`,
  });
}
