import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, PutAction } from './action.ts';
import { recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyPut(book: Book, action: PutAction): ApplyResult {
  const { table, record } = action;
  if (typeof record?.id !== 'string' || record.id === '') {
    return err('request-invalid', table, 'The record has no id.', 'Give every record an id of its own.');
  }
  const records = recordsOf(book, table);
  const index = records.findIndex((each) => each.id === record.id);
  const before = records[index];
  if (before === undefined) {
    const at = Math.max(0, Math.min(action.at ?? records.length, records.length));
    const label = action.label ?? `Add ${recordLabel(table, record)}`;
    const after = withRecords(book, table, records.toSpliced(at, 0, record));
    return ok({ book: after, inverse: { kind: 'remove', table, id: record.id, label }, label });
  }
  const label = action.label ?? `Change ${recordLabel(table, record)}`;
  const after = withRecords(book, table, records.with(index, record));
  return ok({ book: after, inverse: { kind: 'put', table, record: before, label }, label });
}
