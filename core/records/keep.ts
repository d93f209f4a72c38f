import { err, ok, type Result } from '../base/index.ts';
import type { ApplicationRecord, Book } from '../book/index.ts';
import type { Action } from '../edit/index.ts';
import { contentOf } from './content.ts';
import { differences } from './differences.ts';
import type { Draft, RecordSubject } from './types.ts';
import { sealed, versionsOf } from './versions.ts';

/** When, by whom and why a version is written. */
export type Signed = {
  /** By the clock on the wall, YYYY-MM-DDTHH:MM. */
  readonly writtenAt: string;
  readonly writtenBy: string;
  /** Of a correction; '' for a first version. */
  readonly why: string;
};

/** The version that was written, and the edit that puts it into the book. */
export type Kept = { readonly record: ApplicationRecord; readonly action: Action };

/**
 * Writes a draft as the next version of its record: the first one, or a correction that says why. Nothing that is kept is changed.
 * Errors: 'record-not-done' where nothing was written down of the visit, 'record-unsigned' without a name, or without a reason for a
 * correction, 'nothing-to-do' where the newest version says the same.
 */
export function keepRecord(book: Book, draft: Draft, signed: Signed): Result<Kept> {
  const where = whereOf(book, draft.subject);
  if (!draft.isWritten) {
    const hint = 'Mark the stop done in Under way, with what was really used.';
    return err('record-not-done', where, 'Nothing is written down of this visit yet.', hint);
  }
  const versions = versionsOf(book, draft.subject);
  const last = versions.at(-1);
  if (last !== undefined && last.withdrawn !== true && differences(last, draft).length === 0) {
    return err(
      'nothing-to-do',
      where,
      'The record that is kept says the same.',
      'Correct the visit or the book first.',
    );
  }
  const next = { ...contentOf(draft), ...headOf(book, draft.subject, versions, signed) };
  return signedVersion(where, next, last, last === undefined ? 'Keep' : 'Correct');
}

/**
 * Writes a version that says that the record holds no more. What it said before stays to be read. Errors: 'nothing-to-do' where there is
 * none or it is withdrawn already, 'record-unsigned'.
 */
export function withdrawRecord(book: Book, subject: RecordSubject, signed: Signed): Result<Kept> {
  const where = whereOf(book, subject);
  const versions = versionsOf(book, subject);
  const last = versions.at(-1);
  if (last === undefined || last.withdrawn === true) {
    return err('nothing-to-do', where, 'There is no record that holds.', 'Keep the record first.');
  }
  const { elements, products } = last;
  const head = headOf(book, subject, versions, signed);
  return signedVersion(where, { ...head, withdrawn: true, elements, products }, last, 'Withdraw');
}

function signedVersion(
  where: string,
  next: Omit<ApplicationRecord, 'fingerprint'>,
  last: ApplicationRecord | undefined,
  verb: string,
): Result<Kept> {
  if (next.writtenBy === '') {
    return err('record-unsigned', where, 'A record says who wrote it.', 'Enter your name.');
  }
  if (last !== undefined && next.why === '') {
    return err('record-unsigned', where, 'A correction says why it was made.', 'Enter the reason.');
  }
  const record = sealed(next, last);
  return ok({ record, action: { kind: 'put', table: 'applicationRecords', record, label: `${verb} ${where}` } });
}

function headOf(
  book: Book,
  { on, propertyId, roundId, rigId }: RecordSubject,
  versions: readonly ApplicationRecord[],
  signed: Signed,
): Omit<ApplicationRecord, 'fingerprint' | 'elements' | 'products'> {
  const recordId = versions.at(-1)?.recordId ?? freshRecordId(book);
  const version = versions.length + 1;
  const writtenBy = signed.writtenBy.trim();
  const why = signed.why.trim();
  const { writtenAt } = signed;
  return {
    id: `${recordId} v${version}`,
    recordId,
    version,
    on,
    propertyId,
    roundId,
    rigId,
    writtenAt,
    writtenBy,
    why,
  };
}

function freshRecordId(book: Book): string {
  const taken = new Set(book.applicationRecords.map((each) => each.recordId));
  let number = taken.size + 1;
  while (taken.has(`record-${number}`)) number += 1;
  return `record-${number}`;
}

/** "application record of Birch house on 2027-03-16". */
function whereOf(book: Book, { propertyId, on }: RecordSubject): string {
  const name = book.properties.find((each) => each.id === propertyId)?.name;
  return `application record of ${name === undefined || name === '' ? propertyId : name} on ${on}`;
}
