import { describe, expect, test, vi } from 'vitest';
import { readBook } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';

vi.mock('lucide-react', () => ({}));

const { drivingColumns, moneyColumns } = await import('../../../renderer/rooms/shed/terms.tsx');

const read = readBook('{"format":"swardway-book","version":1,"id":"b","name":"Empty","invented":true}', 'b.json');
if (!read.ok) throw new Error(read.error.detail);
const { book } = read.value;
const terms = { prices: book.prices, travel: book.travel };

describe.each([...moneyColumns, ...drivingColumns].map((column) => [column.label, column] as const))(
  '%s',
  (_, column) => {
    test('is set and read back, and the book takes it', () => {
      if (column.kind !== 'figure') throw new Error('these are figures');
      const next = column.set(terms, 1.75);
      expect(column.get(next)).toBe(1.75);
      expect(column.get(terms)).not.toBe(1.75);
      expect(applyAction(book, { kind: 'set', changes: next })).toMatchObject({ ok: true, value: { book: next } });
    });
  },
);

test('every price of the book can be entered', () => {
  const changed = moneyColumns.reduce((so, column) => (column.kind === 'figure' ? column.set(so, 7) : so), terms);
  expect(Object.values(changed.prices)).toEqual(Object.keys(book.prices).map(() => 7));
});
