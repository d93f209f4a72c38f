import { describe, expect, it } from 'vitest';
import { type Book, emptyBook, type Property } from '../../../core/book/index.ts';
import type { Action } from '../../../core/edit/index.ts';
import { keepTotals } from '../../../renderer/stores/keep-totals.ts';
import { property, stated } from '../../core/measure/lawns.ts';

const lawn: Property = { ...property([stated('lawn', 5000)]), measuredOn: '2025-03-02' };
const book: Book = { ...emptyBook('invented', 'Invented'), properties: [lawn] };
const put = (record: Property): Action => ({ kind: 'put', table: 'properties', record, label: 'Change' });

describe('keepTotals', () => {
  it('keeps the earlier total of a lawn whose ground changes', () => {
    const changed = keepTotals(book, put({ ...lawn, zones: [stated('lawn', 6000)] }), '2027-03-09');
    expect(changed).toMatchObject({
      label: 'Change',
      record: { measuredOn: '2027-03-09', pastMeasures: [{ on: '2025-03-02', treatableSqFt: 5000 }] },
    });
  });

  it('dates a lawn that is measured for the first time', () => {
    const fresh = { ...property([stated('lawn', 700)]), id: 'new' };
    expect(keepTotals(book, put(fresh), '2027-03-09')).toMatchObject({ record: { measuredOn: '2027-03-09' } });
  });

  it('leaves all other edits as they are', () => {
    const others: readonly Action[] = [
      put({ ...lawn, name: 'New name' }),
      put({ ...lawn, zones: [stated('lawn', 5000)] }),
      // Brings a date, or an earlier total, of its own.
      put({ ...lawn, zones: [stated('lawn', 6000)], measuredOn: '2026-01-01' }),
      put({ ...lawn, zones: [stated('lawn', 6000)], pastMeasures: [{ treatableSqFt: 1, how: '' }] }),
      { kind: 'remove', table: 'properties', id: lawn.id },
      { kind: 'set', changes: { name: 'Other' } },
      { kind: 'put', table: 'properties', record: { id: 'odd' } as Property },
    ];
    for (const each of others) expect(keepTotals(book, each, '2027-03-09')).toBe(each);
  });
});
