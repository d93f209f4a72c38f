import { ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, RemoveAction } from './action.ts';
import { findRecord, noSuchRecord } from './find-record.ts';
import { isLasting, kept } from './lasting.ts';
import { recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyRemove(book: Book, action: RemoveAction): ApplyResult {
  const { table, id } = action;
  const records = recordsOf(book, table);
  const index = findRecord(records, id, action.at);
  const record = records[index];
  if (record === undefined) return noSuchRecord(table, id);
  if (isLasting(table)) return { ok: false, error: kept(table, record) };
  const label = action.label ?? `Remove ${recordLabel(table, record)}`;
  const after = withRecords(book, table, records.toSpliced(index, 1));
  return ok({ book: after, inverse: { kind: 'put', table, record, at: index, insert: true, label }, label });
}
