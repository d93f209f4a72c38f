import { type AppError, err } from '../base/index.ts';
import type { ApplicationRecord } from '../book/index.ts';
import type { Action } from './action.ts';
import { type AnyRecord, recordLabel, type TableName } from './tables.ts';

/** Tables whose records are written once: no edit changes, moves or removes one, and undo does not either. */
const LASTING: readonly TableName[] = ['applicationRecords'];

export function isLasting(table: TableName): boolean {
  return LASTING.includes(table);
}

/**
 * Why a record may not be put into a table whose records last; null where it may. The next version of a record is one more than the
 * last one, and is about the same work. Code 'record-kept'.
 *
 * @param records those of the table
 * @param at where it is wanted; absent: at the end
 */
export function refuseLastingPut(
  table: TableName,
  records: readonly AnyRecord[],
  record: AnyRecord,
  at: number | undefined,
): AppError | null {
  if (!isLasting(table)) return null;
  if (records.some((each) => each.id === record.id)) return kept(table, record);
  if (at !== undefined && at < records.length) return kept(table, record);
  return versionFault(records as readonly ApplicationRecord[], record as ApplicationRecord);
}

/** The refusal of changing what lasts. */
export function kept(table: TableName, record: AnyRecord): AppError {
  return refusal(
    recordLabel(table, record),
    'It was written and is kept as it is.',
    'Write a corrected version, or one that withdraws it; both stay.',
  );
}

function versionFault(records: readonly ApplicationRecord[], record: ApplicationRecord): AppError | null {
  const earlier = records.filter((each) => each.recordId === record.recordId);
  const last = earlier.at(-1);
  const where = recordLabel('applicationRecords', record);
  if (record.version !== earlier.length + 1) {
    const detail = `It says that it is version ${record.version}, but ${earlier.length} are kept.`;
    return refusal(where, detail, 'Look at the newest version, then write the correction again.');
  }
  if (last === undefined) return null;
  const isSame = (['on', 'propertyId', 'roundId', 'rigId'] as const).every((name) => last[name] === record[name]);
  if (isSame) return null;
  return refusal(where, 'It is about other work than its earlier version.', 'Write a record of its own for it.');
}

function refusal(where: string, detail: string, hint: string): AppError {
  return err('record-kept', where, detail, hint).error;
}

/** True for an inverse that takes nothing back: the edit stays, and is no step to undo. */
export function takesNothingBack(inverse: Action): boolean {
  return inverse.kind === 'several' && inverse.actions.every(takesNothingBack);
}
