import { err, ok } from '../base/index.ts';
import { type Book, recordFault } from '../book/index.ts';
import type { Action, ApplyResult, PutAction } from './action.ts';
import { findRecord } from './find-record.ts';
import { isLasting, refuseLastingPut } from './lasting.ts';
import { recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyPut(book: Book, action: PutAction): ApplyResult {
  const { table, record } = action;
  if (typeof record?.id !== 'string' || record.id === '') {
    return err('request-invalid', table, 'The record has no id.', 'Give every record an id of its own.');
  }
  const fault = recordFault(table, record, recordLabel(table, record));
  if (fault !== null) return { ok: false, error: fault };
  const records = recordsOf(book, table);
  const refused = refuseLastingPut(table, records, record, action.at);
  if (refused !== null) return { ok: false, error: refused };
  const index = action.insert === true ? -1 : findRecord(records, record.id, action.at);
  const before = records[index];
  if (before === undefined) {
    const at = Math.max(0, Math.min(action.at ?? records.length, records.length));
    const label = action.label ?? `Add ${recordLabel(table, record)}`;
    const after = withRecords(book, table, records.toSpliced(at, 0, record));
    const inverse: Action = isLasting(table)
      ? { kind: 'several', label, actions: [] }
      : { kind: 'remove', table, id: record.id, at, label };
    return ok({ book: after, inverse, label });
  }
  const label = action.label ?? `Change ${recordLabel(table, record)}`;
  const after = withRecords(book, table, records.with(index, record));
  return ok({ book: after, inverse: { kind: 'put', table, record: before, at: index, label }, label });
}
