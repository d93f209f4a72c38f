import { type Err, err } from '../base/index.ts';
import { type AnyRecord, RECORD_NAMES, type TableName } from './tables.ts';

/**
 * Where a record stands in its table, or -1. Ids are meant to be unique; in a faulty book that has one twice, `at` says which
 * of them is meant, so that undoing takes back the right one.
 */
export function findRecord(records: readonly AnyRecord[], id: string, at?: number): number {
  return at !== undefined && records[at]?.id === id ? at : records.findIndex((each) => each.id === id);
}

/** The refusal of an edit of a record that is not there. */
export function noSuchRecord(table: TableName, id: string): Err {
  const what = RECORD_NAMES[table];
  return err(
    'reference-missing',
    `${what} ${id}`,
    `The book has no such ${what}.`,
    'It may have been removed meanwhile.',
  );
}
