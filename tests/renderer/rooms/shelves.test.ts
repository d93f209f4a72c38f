import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { type Book, readBook } from '../../../core/book/index.ts';
import { applyAction, type RecordOf } from '../../../core/edit/index.ts';

// The rooms draw on a map that needs a window; nothing of it is used here.
vi.mock('lucide-react', () => ({}));
vi.mock('../../../renderer/map/index.ts', () => ({ MapPanel: () => null }));

const {
  applicatorShelf,
  fillPointShelf,
  handMethodShelf,
  machineShelf,
  mixShelf,
  productShelf,
  rigShelf,
  treatmentShelf,
} = await import('../../../renderer/rooms/shed/index.ts');

import type { Column, ShelfPlan } from '../../../renderer/rooms/shed/index.ts';
import { SHED_SHELVES, type Shelf } from '../../../renderer/stores/index.ts';

const sample = readBook(
  readFileSync(new URL('../../../sample-routes/mixed-day.json', import.meta.url), 'utf8'),
  'mixed-day.json',
);
if (!sample.ok) throw new Error(sample.error.detail);
const book: Book = sample.value.book;

const PLANS = [
  machineShelf,
  handMethodShelf,
  rigShelf,
  fillPointShelf,
  productShelf,
  mixShelf,
  treatmentShelf,
  applicatorShelf,
] as readonly ShelfPlan<Shelf>[];

const accepts = (shelf: Shelf, record: RecordOf<Shelf>) => applyAction(book, { kind: 'put', table: shelf, record });

/** Another value of the same kind, which the schema should take. */
function changed(column: Column<RecordOf<Shelf>>, record: RecordOf<Shelf>): RecordOf<Shelf> {
  switch (column.kind) {
    case 'text':
      return column.set(record, `${column.get(record)} x`);
    case 'figure': {
      const value = column.get(record) ?? 0;
      const next = column.figure === 'whole' ? value + 1 : column.figure === 'share' ? 0.5 : value + 0.25;
      return column.set(record, column.figure === 'degrees' ? value - 0.25 : next);
    }
    case 'choice': {
      const other = column.options(book, record).find((option) => option.value !== column.get(record));
      return other === undefined ? record : column.set(record, other.value, book);
    }
    case 'several': {
      const [first] = column.options(book, record);
      const chosen = column.get(record, book);
      return column.set(record, chosen.length > 0 ? [] : first === undefined ? [] : [first.value], book);
    }
    case 'date':
      return column.set(record, '2027-06-30');
    case 'flag':
      return column.set(record, !column.get(record));
    case 'shown':
      return record;
  }
}

test('there is a shelf for every table of the shed', () => {
  expect(PLANS.map((plan) => plan.shelf)).toEqual([...SHED_SHELVES]);
});

describe.each(PLANS.map((plan) => [plan.shelf, plan] as const))('%s', (shelf, plan) => {
  test('a new record is one that the book takes', () => {
    const record = plan.create(book, 'brand-new');
    if (typeof record === 'string') throw new Error(record);
    expect(accepts(shelf, record)).toMatchObject({ ok: true });
  });

  test('an empty book gets a new record or a reason', () => {
    const empty = {
      ...book,
      machines: [],
      handMethods: [],
      rigs: [],
      fillPoints: [],
      products: [],
      mixes: [],
      treatments: [],
    };
    const record = plan.create(empty, 'brand-new');
    expect(typeof record === 'string' ? record.length : record.id).toBeTruthy();
  });

  test('every member can be changed to something the book takes, and the change is read back', () => {
    for (const record of book[shelf] as readonly RecordOf<Shelf>[]) {
      for (const column of plan.columns) {
        if (column.kind === 'shown' || column.hiddenFor?.(record) === true) continue;
        const next = changed(column, record);
        expect(accepts(shelf, next), `${record.id}, ${column.label}`).toMatchObject({ ok: true });
        const options = column.kind === 'choice' ? column.options(book, record).length : 2;
        if (options > 1)
          expect(column.get(next, book), `${record.id}, ${column.label}`).not.toEqual(column.get(record, book));
      }
    }
  });

  test('taking an optional figure away leaves a record that the book takes', () => {
    for (const record of book[shelf] as readonly RecordOf<Shelf>[]) {
      for (const column of plan.columns) {
        if (column.kind !== 'figure' || column.unset === undefined) continue;
        expect(accepts(shelf, column.unset(record)), `${record.id}, ${column.label}`).toMatchObject({ ok: true });
      }
    }
  });
});

test('a fill point closes, is always open again, and holds what is ticked', () => {
  const point = book.fillPoints[0];
  const column = (label: string) => fillPointShelf.columns.find((each) => each.label === label);
  const closes = column('closes');
  const every = column('holds every product');
  const products = fillPointShelf.columns.find((each) => each.label === 'products' && each.kind === 'several');
  if (point === undefined || closes?.kind !== 'figure' || every?.kind !== 'flag' || products?.kind !== 'several') {
    throw new Error('a column is missing');
  }
  const closed = closes.set({ ...point, hours: undefined }, 1020);
  expect(closed.hours).toEqual({ openMin: 0, closeMin: 1020 });
  expect(closes.unset?.(closed)).not.toHaveProperty('hours');
  const some = every.set(point, false);
  const [first] = book.products;
  expect(products.set(some, [first?.id ?? ''], book).products).toEqual([first?.id]);
});

test('the program never makes up a rate or a label limit', () => {
  const product = productShelf.create(book, 'brand-new');
  if (typeof product === 'string') throw new Error(product);
  expect(product.label).toEqual({ registration: '', needsAgitation: false, note: '' });
  const mix = mixShelf.create(book, 'brand-new');
  if (typeof mix === 'string') throw new Error(mix);
  expect(mix.parts).toEqual([]);
});
