import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { applyAction } from '../../../../core/edit/index.ts';
import { writeRecordsTable } from '../../../../core/formats/index.ts';
import { keepRecord } from '../../../../core/records/index.ts';
import { seasonLedger } from '../../../../core/round/ledger/index.ts';
import { DONE, draftOf, recordBook } from '../../records/record-book.ts';

type Row = Readonly<Record<string, string>>;
/** Rows by column, by a parser that is not the program's own. */
const rowsOf = (book: Book): readonly Row[] =>
  parse(writeRecordsTable(book, book.applicationRecords), { columns: true, record_delimiter: '\r\n' });

function kept(book: Book, why = '', writtenBy = 'Kim Example'): Book {
  const written = keepRecord(book, draftOf(book), { writtenAt: '2027-03-16T17:05', writtenBy, why });
  const applied = written.ok ? applyAction(book, written.value.action) : written;
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value.book;
}

const named = (customer: string): Book => {
  const book = recordBook();
  return { ...book, properties: book.properties.map((each) => ({ ...each, customer: { name: customer } })) };
};

describe('records as a table', () => {
  test('have a row for every product, with words and plain figures', () => {
    const rows = rowsOf(kept(recordBook()));
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({
      record: 'record-1',
      version: '1',
      newest: 'yes',
      withdrawn: 'no',
      written: '2027-03-16 17:05',
      'written by': 'Kim Example',
      date: '2027-03-16',
      customer: 'A. Birch',
      location: '1 Birch Lane, Fairview; 40.00000, -89.40000 (latitude, longitude)',
      'product id': 'early',
      amount: '4.25',
      unit: 'fl-oz',
      'area (sq ft)': '8000',
      zones: 'front back',
      'epa registration number': '0000-00-A',
      missing: '',
    });
  });

  test('add up to what the ledger of the season counts', () => {
    const book = kept(recordBook());
    const ledger = seasonLedger({ ...book, rounds: [] }, '2027', {
      ground: { areaSqFt: () => null, bandSqFt: () => 0 },
    });
    for (const row of rowsOf(book)) {
      expect(Number(row.amount)).toBeCloseTo(ledger.total.products.get(row['product id'] ?? '') ?? 0, 6);
    }
  });

  test('hold every version, and say which is the newest', () => {
    const first = kept(recordBook());
    const visit = { ...DONE, arriveMin: 560 };
    const rows = rowsOf(kept({ ...first, visits: [visit] }, 'came later'));
    expect(rows.map((each) => [each.version, each.newest, each.why])).toEqual([
      ['1', 'no', ''],
      ['1', 'no', ''],
      ['2', 'yes', 'came later'],
      ['2', 'yes', 'came later'],
    ]);
  });

  test('name what was missing and what is only planned', () => {
    const { arriveMin: _, conditions: __, ...bare } = DONE;
    const [row] = rowsOf(kept(recordBook([bare])));
    expect(row?.time).toBe('9:00 am to 9:30 am (as planned)');
    expect(row?.weather).toBe('');
    expect(row?.missing).toBe('Time; Wind; Wind from; Air temperature; Weather');
  });

  test.each(['=1+1', '+1', '-1+2', '@SUM(A1)', '\t=1', '\r=1'])('a name such as %j is no formula', (name) => {
    const [row] = rowsOf(kept(named(`${name}x`), '', `${name}y`));
    for (const cell of Object.values(row ?? {})) expect(cell).not.toMatch(/^(?:[=+@\t\r\n]|-(?!\d+(?:\.\d+)?$))/);
    expect(row?.customer).toContain('x');
  });

  test('quotes, commas, ends of lines, HTML, emoji and names from right to left come through', () => {
    const name = 'A "B", C\nD <b>דוד</b> 🌱';
    expect(rowsOf(kept(named(name)))[0]?.customer).toBe(name);
  });

  test('a visit with nothing put down has one row', () => {
    const book = kept(recordBook([{ ...DONE, outcome: { kind: 'done', tasks: [] } }]));
    expect(rowsOf(book)).toHaveLength(1);
    expect(rowsOf(book)[0]?.amount).toBe('');
  });
});
