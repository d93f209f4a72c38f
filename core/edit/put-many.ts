import type { Book } from '../book/index.ts';
import { recordFault } from '../book/index.ts';
import type { Action, ApplyResult, PutAction } from './action.ts';
import { isLasting } from './lasting.ts';
import { type AnyRecord, recordLabel, recordsOf, withRecords } from './tables.ts';

/** Fewer than that are quicker one by one. */
export const LEAST_MANY = 8;

/** True for a put that goes by its id alone, so that a run of them needs no look at the table for each. */
export function isPlainPut(action: Action): action is PutAction {
  return (
    action.kind === 'put' &&
    action.insert === undefined &&
    action.at === undefined &&
    !isLasting(action.table) &&
    isNamed(action.record)
  );
}

function isNamed(record: AnyRecord | undefined): boolean {
  return typeof record?.id === 'string' && record.id !== '';
}

/** How many actions from `start` on are plain puts into one table. */
export function runOfPuts(actions: readonly Action[], start: number): number {
  const first = actions[start];
  if (first === undefined || !isPlainPut(first)) return 0;
  let end = start + 1;
  for (; end < actions.length; end += 1) {
    const next = actions[end];
    if (next === undefined || !isPlainPut(next) || next.table !== first.table) break;
  }
  return end - start;
}

/**
 * Plain puts into one table, with the same outcome as one after the other, in time by their number and not by their number times
 * the table's. The inverse undoes them from the last to the first.
 */
export function applyPuts(book: Book, puts: readonly PutAction[], label: string): ApplyResult {
  const [first] = puts;
  if (first === undefined)
    return { ok: true, value: { book, inverse: { kind: 'several', label, actions: [] }, label } };
  const records = [...recordsOf(book, first.table)];
  const places = new Map<string, number>();
  for (const [index, record] of records.entries()) if (!places.has(record.id)) places.set(record.id, index);
  const inverses: Action[] = [];
  for (const put of puts) {
    const fault = recordFault(put.table, put.record, recordLabel(put.table, put.record));
    if (fault !== null) return { ok: false, error: fault };
    const at = places.get(put.record.id);
    const before = at === undefined ? undefined : records[at];
    inverses.push(inverseOf(put, before, at ?? records.length));
    places.set(put.record.id, at ?? records.length);
    records[at ?? records.length] = put.record;
  }
  const actions = inverses.reverse();
  return {
    ok: true,
    value: { book: withRecords(book, first.table, records), inverse: { kind: 'several', label, actions }, label },
  };
}

function inverseOf(put: PutAction, before: AnyRecord | undefined, at: number): Action {
  const { table, record } = put;
  const what = recordLabel(table, record);
  if (before === undefined) return { kind: 'remove', table, id: record.id, at, label: put.label ?? `Add ${what}` };
  return { kind: 'put', table, record: before, at, label: put.label ?? `Change ${what}` };
}
