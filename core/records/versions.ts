import { fingerprint } from '../base/index.ts';
import type { ApplicationRecord, Book } from '../book/index.ts';
import type { RecordSubject } from './types.ts';

/** All versions of the record of one piece of work, oldest first; none where nothing is kept. */
export function versionsOf(book: Book, subject: RecordSubject): readonly ApplicationRecord[] {
  return book.applicationRecords.filter(
    (each) =>
      each.propertyId === subject.propertyId &&
      each.on === subject.on &&
      each.roundId === subject.roundId &&
      each.rigId === subject.rigId,
  );
}

/** The newest version of every record, in the order in which they were first written. */
export function newestVersions(book: Book): readonly ApplicationRecord[] {
  return [...new Map(book.applicationRecords.map((each) => [each.recordId, each])).values()];
}

/** A version as it is to be written, with the fingerprint that ties it to the one before. */
export function sealed(
  record: Omit<ApplicationRecord, 'fingerprint'>,
  before: ApplicationRecord | undefined,
): ApplicationRecord {
  return { ...record, fingerprint: fingerprintOf(record, before) };
}

function fingerprintOf(
  record: Omit<ApplicationRecord, 'fingerprint'> & { readonly fingerprint?: string },
  before: ApplicationRecord | undefined,
): string {
  const { fingerprint: _, ...said } = record;
  return fingerprint({ said, before: before?.fingerprint ?? '' });
}

/** A version that is not as it was written, and what is odd about it. */
export type Altered = { readonly record: ApplicationRecord; readonly how: 'changed' | 'version-lacking' };

/**
 * Versions that were changed since they were written, and versions whose predecessor is gone. It notices what other programs and slips
 * of an editor do; it is no protection against forgery.
 */
export function alteredVersions(book: Book): readonly Altered[] {
  const last = new Map<string, ApplicationRecord>();
  return book.applicationRecords.flatMap((record): Altered[] => {
    const before = last.get(record.recordId);
    last.set(record.recordId, record);
    if (record.version !== (before?.version ?? 0) + 1) return [{ record, how: 'version-lacking' }];
    return record.fingerprint === fingerprintOf(record, before) ? [] : [{ record, how: 'changed' }];
  });
}
