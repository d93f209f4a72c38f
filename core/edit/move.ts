import { err, ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, MoveAction } from './action.ts';
import { findRecord, noSuchRecord } from './find-record.ts';
import { isLasting, kept } from './lasting.ts';
import { recordLabel, recordsOf, withRecords } from './tables.ts';

export function applyMove(book: Book, action: MoveAction): ApplyResult {
  const { table, id } = action;
  const records = recordsOf(book, table);
  const from = findRecord(records, id, action.at);
  const record = records[from];
  if (record === undefined) return noSuchRecord(table, id);
  if (isLasting(table)) return { ok: false, error: kept(table, record) };
  if (!Number.isInteger(action.to)) {
    return err('request-invalid', table, 'A record moves to a whole place.', 'Report this as a fault of the program.');
  }
  const to = Math.max(0, Math.min(action.to, records.length - 1));
  const after = withRecords(book, table, records.toSpliced(from, 1).toSpliced(to, 0, record));
  return ok({
    book: after,
    inverse: { kind: 'move', table, id, at: to, to: from },
    label: `Move ${recordLabel(table, record)}`,
  });
}
