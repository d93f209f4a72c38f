import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, RemoveAction } from './action.ts';
import { RECORD_NAMES, recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyRemove(book: Book, action: RemoveAction): ApplyResult {
  const { table, id } = action;
  const records = recordsOf(book, table);
  const index = records.findIndex((each) => each.id === id);
  const record = records[index];
  if (record === undefined) {
    const what = RECORD_NAMES[table];
    return err(
      'reference-missing',
      `${what} ${id}`,
      `The book has no such ${what}.`,
      'It may have been removed already.',
    );
  }
  const label = action.label ?? `Remove ${recordLabel(table, record)}`;
  const after = withRecords(book, table, records.toSpliced(index, 1));
  return ok({ book: after, inverse: { kind: 'put', table, record, at: index, label }, label });
}
