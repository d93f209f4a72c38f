import { describe, expect, test } from 'vitest';
import type { Book, Visit } from '../../../core/book/index.ts';
import { readBook, writeBook } from '../../../core/book/index.ts';
import { type Action, applyAction, takesNothingBack } from '../../../core/edit/index.ts';
import {
  alteredVersions,
  type Draft,
  differences,
  keepRecord,
  missingInRecord,
  newestVersions,
  typedIn,
  versionsOf,
  withdrawRecord,
  withTyped,
} from '../../../core/records/index.ts';
import { DONE, draftOf, recordBook, SUBJECT } from './record-book.ts';

const FIRST = { writtenAt: '2027-03-16T17:05', writtenBy: 'Kim Example', why: '' };
const LATER = { writtenAt: '2027-03-18T08:00', writtenBy: 'Office', why: 'gallons read again' };

function done(book: Book, action: Action): Book {
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value.book;
}

function kept(book: Book, signed = FIRST, draft: Draft = draftOf(book)): Book {
  const written = keepRecord(book, draft, signed);
  if (!written.ok) throw new Error(written.error.detail);
  return done(book, written.value.action);
}

/** The same visit with other gallons in front. */
function corrected(book: Book, usedGal: number): Book {
  const tasks = DONE.outcome.kind === 'done' ? DONE.outcome.tasks : [];
  const visit: Visit = { ...DONE, outcome: { kind: 'done', tasks: [{ ...tasks[0]!, usedGal }, tasks[1]!] } };
  return { ...book, visits: [visit] };
}

describe('a record that is kept', () => {
  const book = kept(recordBook());

  test('holds words and figures of its own, whatever becomes of the book', () => {
    const [record] = book.applicationRecords;
    expect(record).toMatchObject({ id: 'record-1 v1', recordId: 'record-1', version: 1, ...SUBJECT, ...FIRST });
    expect(record?.products[0]).toMatchObject({ productId: 'early', amount: 4.25, unit: 'fl-oz', areaSqFt: 8000 });
    const emptied = { ...book, properties: [], products: [], visits: [], treatments: [] };
    expect(emptied.applicationRecords[0]).toBe(record);
    const read = readBook(writeBook(book), 'book');
    expect(read.ok && read.value.book.applicationRecords).toEqual(book.applicationRecords);
  });

  test('names what is missing, and marks what was only planned', () => {
    const { arriveMin: _, conditions: __, ...bare } = DONE;
    const [record] = kept(recordBook([bare])).applicationRecords;
    expect(record?.elements.find((each) => each.id === 'time')).toEqual({
      id: 'time',
      text: '9:00 am to 9:30 am',
      from: 'planned',
    });
    expect(record?.elements.find((each) => each.id === 'sky')).toEqual({ id: 'sky', text: '', from: 'missing' });
    expect(record?.elements.some((each) => each.id === 'helpers')).toBe(false);
    expect(missingInRecord(record!).map((each) => each.elementId)).toEqual([
      'time',
      'wind-speed',
      'wind-from',
      'temperature',
      'sky',
    ]);
  });

  test('is neither changed, removed, moved nor put beside itself', () => {
    const [record] = book.applicationRecords;
    if (record === undefined) throw new Error('nothing kept');
    const table = 'applicationRecords';
    const attempts: readonly Action[] = [
      { kind: 'put', table, record: { ...record, writtenBy: 'Somebody' } },
      { kind: 'put', table, record },
      { kind: 'put', table, record, insert: true },
      { kind: 'put', table, record: { ...record, id: 'other' } },
      { kind: 'put', table, record: { ...record, id: 'record-1 v3', version: 3 } },
      { kind: 'put', table, record: { ...record, id: 'record-1 v2', version: 2, on: '2027-03-17' } },
      { kind: 'put', table, record: { ...record, id: 'r', recordId: 'r' }, at: 0 },
      { kind: 'remove', table, id: record.id },
      { kind: 'move', table, id: record.id, to: 0 },
    ];
    for (const action of attempts) {
      expect(applyAction(book, action), JSON.stringify(action)).toMatchObject({ error: { code: 'record-kept' } });
      const several: Action = { kind: 'several', label: 'Import', actions: Array.from({ length: 9 }, () => action) };
      expect(applyAction(book, several)).toMatchObject({ error: { code: 'record-kept' } });
    }
  });

  test('stays when the edit that wrote it would be undone', () => {
    const written = keepRecord(recordBook(), draftOf(recordBook()), FIRST);
    if (!written.ok) throw new Error(written.error.detail);
    const applied = applyAction(recordBook(), written.value.action);
    if (!applied.ok) throw new Error(applied.error.detail);
    expect(takesNothingBack(applied.value.inverse)).toBe(true);
    expect(done(applied.value.book, applied.value.inverse)).toEqual(applied.value.book);
    const both: Action = {
      kind: 'several',
      label: 'Both',
      actions: [{ kind: 'set', changes: { note: 'x' } }, written.value.action],
    };
    const two = applyAction(recordBook(), both);
    if (!two.ok) throw new Error(two.error.detail);
    expect(takesNothingBack(two.value.inverse)).toBe(false);
    const back = done(two.value.book, two.value.inverse);
    expect(back.note).toBe('');
    expect(back.applicationRecords).toHaveLength(1);
  });

  test('is not written without a name, nor of what is not done, nor twice', () => {
    const fresh = recordBook();
    expect(keepRecord(fresh, draftOf(fresh), { ...FIRST, writtenBy: '  ' })).toMatchObject({
      error: { code: 'record-unsigned' },
    });
    const planned = recordBook([]);
    expect(keepRecord(planned, draftOf(planned), FIRST)).toMatchObject({ error: { code: 'record-not-done' } });
    expect(keepRecord(book, draftOf(book), LATER)).toMatchObject({ error: { code: 'nothing-to-do' } });
  });
});

describe('a correction', () => {
  const before = kept(recordBook());
  const changed = corrected(before, 11.5);
  const after = kept(changed, LATER);

  test('is a version beside the old one, with when, who and why', () => {
    expect(differences(before.applicationRecords[0]!, draftOf(changed)).map((each) => each.words)).toEqual([
      'Total amount',
      'Rate',
      'Mix put out',
      'Total amount',
      'Rate',
      'Mix put out',
    ]);
    expect(after.applicationRecords).toHaveLength(2);
    expect(after.applicationRecords[0]).toBe(before.applicationRecords[0]);
    expect(after.applicationRecords[1]).toMatchObject({ id: 'record-1 v2', version: 2, ...LATER });
    // 18 gal at 0.25 fl oz in a gallon.
    expect(after.applicationRecords[1]?.products[0]?.amount).toBe(4.5);
    expect(versionsOf(after, SUBJECT)).toHaveLength(2);
    expect(newestVersions(after)).toEqual([after.applicationRecords[1]]);
  });

  test('says why', () => {
    expect(keepRecord(changed, draftOf(changed), { ...LATER, why: ' ' })).toMatchObject({
      error: { code: 'record-unsigned' },
    });
  });

  test('can withdraw it, and it can be kept again', () => {
    const gone = withdrawRecord(after, SUBJECT, { ...LATER, why: 'wrong lawn' });
    if (!gone.ok) throw new Error(gone.error.detail);
    const withdrawn = done(after, gone.value.action);
    expect(withdrawn.applicationRecords[2]).toMatchObject({ version: 3, withdrawn: true, why: 'wrong lawn' });
    expect(withdrawn.applicationRecords[2]?.products).toEqual(after.applicationRecords[1]?.products);
    expect(withdrawRecord(withdrawn, SUBJECT, LATER)).toMatchObject({ error: { code: 'nothing-to-do' } });
    expect(withdrawRecord(recordBook(), SUBJECT, LATER)).toMatchObject({ error: { code: 'nothing-to-do' } });
    const again = kept(withdrawn, { ...LATER, why: 'it was the right one' });
    expect(again.applicationRecords[3]).toMatchObject({ version: 4 });
    expect(again.applicationRecords[3]).not.toHaveProperty('withdrawn');
  });

  test('typed words stay in later versions until they are taken away; figures cannot be typed', () => {
    const typed = [
      { elementId: 'sky', text: 'light cloud' },
      { elementId: 'target', treatmentId: 'spray', productId: 'early', text: 'foxtail' },
      { elementId: 'amount', treatmentId: 'spray', productId: 'early', text: 'none at all' },
      { elementId: 'date', text: '2027-01-01' },
    ];
    const book = kept(before, LATER, withTyped(draftOf(before), typed));
    const version = book.applicationRecords[1]!;
    expect(typedIn(version)).toEqual([typed[0], typed[1]]);
    expect(version.products[0]?.amount).toBe(4.25);
    const next = withTyped(draftOf(book), typedIn(version));
    expect(differences(version, next)).toEqual([]);
    const taken = withTyped(draftOf(book), [...typedIn(version), { elementId: 'sky', text: '' }]);
    expect(differences(version, taken)).toEqual([
      { words: 'Weather', product: '', before: 'light cloud', after: 'clear' },
    ]);
  });
});

describe('versions that another program touched', () => {
  const book = kept(corrected(kept(recordBook()), 11.5), LATER);

  test('are noticed', () => {
    expect(alteredVersions(book)).toEqual([]);
    const [first, second] = book.applicationRecords as readonly [
      Book['applicationRecords'][0],
      Book['applicationRecords'][0],
    ];
    const rewritten = { ...first, products: [{ ...first.products[0]!, amount: 1 }, first.products[1]!] };
    expect(alteredVersions({ ...book, applicationRecords: [rewritten, second] })).toEqual([
      { record: rewritten, how: 'changed' },
    ]);
    expect(alteredVersions({ ...book, applicationRecords: [second] })).toEqual([
      { record: second, how: 'version-lacking' },
    ]);
  });
});
