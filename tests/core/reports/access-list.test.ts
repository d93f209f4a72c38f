import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { SHEETS, type Sheet, sheetText } from '../../../core/reports/index.ts';
import { smallPlan } from '../plan/judge/small-plan.ts';
import { fixtureBook } from './fixture.ts';

const plan = smallPlan();
const [day] = plan.days;
if (day === undefined) throw new Error('the small plan has no day');

function sheetOf(book: Book, stops = day?.stops ?? []): Sheet {
  const kind = SHEETS.find((each) => each.id === 'access-list');
  if (kind?.scope !== 'day' || day === undefined) throw new Error('no access list of a day');
  return kind.make({ scope: 'day', book, plan, day: { ...day, stops } });
}

/** Rows of the table, a cell between bars; lines below a stop begin with a tab. */
function rowsOf(sheet: Sheet): readonly string[] {
  return sheet.blocks.flatMap((block) =>
    block.kind === 'table'
      ? block.rows.map((row) => {
          if (!('look' in row)) throw new Error('a row without a look');
          return row.look === 'detail' ? `\t${row.text}` : [...row.lead.slice(1), row.text].join(' | ');
        })
      : [],
  );
}

describe('the access list of a day', () => {
  const book = fixtureBook();
  const withCustomer: Book = {
    ...book,
    properties: book.properties.map((each) =>
      each.id === 'acre' ? { ...each, customer: { name: 'A. Invented', phone: '555 0100' } } : each,
    ),
  };

  test('has every stop in order, whom to call, locked gates, what to mind, address and note', () => {
    const rows = rowsOf(sheetOf(withCustomer));
    const lawns = rows.filter((each) => !each.startsWith('\t'));
    expect(lawns).toHaveLength(day.stops.length);
    expect(lawns.map((each) => Number.parseInt(each, 10))).toEqual(day.stops.map(({ number }) => number));
    const at = rows.findIndex((each) => each.includes('A. Invented'));
    expect(rows[at]).toMatch(/^\d+\. [^|]+ \| \d+:\d\d [ap]m \| A\. Invented, 555 0100 \| side gate \| pets$/);
    expect(rows.slice(at + 1, at + 3)).toEqual(['\t1 acre Lane', '\tBell is broken']);
  });

  test('says that a gate is locked where only the caution says so', () => {
    const cautioned: Book = {
      ...book,
      properties: book.properties.map((each) => ({ ...each, gates: [], cautions: ['locked'] as const })),
    };
    const [first = ''] = rowsOf(sheetOf(cautioned));
    expect(first.split(' | ').slice(-2)).toEqual(['locked gate', '']);
  });

  test('keeps a stop whose lawn is no longer in the book, and says so of a day without stops', () => {
    expect(rowsOf(sheetOf({ ...book, properties: [] }))).toHaveLength(day.stops.length);
    expect(sheetText(sheetOf(book, []))).toContain('The day has no stops.');
  });

  test('is made where it is asked for by name, and is marked as invented', () => {
    expect(SHEETS.find((each) => each.id === 'access-list')?.forOffice).toBe(true);
    expect(sheetOf(book).invented).toBe(true);
  });
});
