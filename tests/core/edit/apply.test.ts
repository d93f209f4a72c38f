import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, emptyBook, type FillPoint, type Product } from '../../../core/book/index.ts';
import { type Action, applyAction } from '../../../core/edit/index.ts';

function product(id: string, name = id): Product {
  return {
    id,
    name,
    form: 'liquid',
    unit: 'fl-oz',
    pricePerUnit: 0,
    label: { registration: '', needsAgitation: false, note: 'invented, not for use' },
    note: '',
  };
}

function done(book: Book, action: Action) {
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value;
}

describe('an edit', () => {
  const book = { ...emptyBook('b', 'Book'), products: [product('one'), product('two'), product('three')] };

  test('adds a record at the end or at a place, and says so', () => {
    expect(done(book, { kind: 'put', table: 'products', record: product('four', 'Four') }).label).toBe(
      'Add product Four',
    );
    const after = done(book, { kind: 'put', table: 'products', record: product('four'), at: 1 }).book;
    expect(after.products.map((each) => each.id)).toEqual(['one', 'four', 'two', 'three']);
  });

  test('replaces a record in its place and leaves the rest shared', () => {
    const after = done(book, { kind: 'put', table: 'products', record: product('two', 'Second') }).book;
    expect(after.products[1]?.name).toBe('Second');
    expect(after.products[0]).toBe(book.products[0]);
    expect(after.rigs).toBe(book.rigs);
    expect(book.products[1]?.name).toBe('two');
  });

  test('refuses what is not there and what has no id', () => {
    expect(applyAction(book, { kind: 'remove', table: 'products', id: 'nine' })).toMatchObject({
      error: { code: 'reference-missing' },
    });
    expect(applyAction(book, { kind: 'move', table: 'products', id: 'nine', to: 0 })).toMatchObject({
      error: { code: 'reference-missing' },
    });
    const nameless = { ...product(''), id: '' };
    expect(applyAction(book, { kind: 'put', table: 'products', record: nameless })).toMatchObject({
      error: { code: 'request-invalid' },
    });
    const unknown = { kind: 'burn' } as unknown as Action;
    expect(applyAction(book, unknown)).toMatchObject({ error: { code: 'request-invalid' } });
    const elsewhere = { kind: 'remove', table: 'format', id: 'x' } as unknown as Action;
    expect(applyAction(book, elsewhere)).toMatchObject({ error: { code: 'request-invalid' } });
  });

  test('several edits are all made or none', () => {
    const half: Action = {
      kind: 'several',
      label: 'Import',
      actions: [
        { kind: 'put', table: 'products', record: product('four') },
        { kind: 'remove', table: 'rigs', id: 'none' },
      ],
    };
    expect(applyAction(book, half).ok).toBe(false);
    expect(book.products).toHaveLength(3);
  });

  test('refuses what the schema of the book does not allow, and says where', () => {
    const wrong = { ...product('two'), pricePerUnit: -3 };
    expect(applyAction(book, { kind: 'put', table: 'products', record: wrong })).toMatchObject({
      error: {
        code: 'book-invalid',
        where: 'product two, pricePerUnit',
        detail: expect.stringContaining('should be 0 or more, but is -3'),
      },
    });
    const torn = { id: 'm', name: 'Machine' } as unknown as Product;
    expect(applyAction(book, { kind: 'put', table: 'machines', record: torn })).toMatchObject({
      error: { code: 'book-invalid' },
    });
    const prices = { ...book.prices, perMile: Number.NaN };
    expect(applyAction(book, { kind: 'set', changes: { prices } })).toMatchObject({ error: { code: 'book-invalid' } });
    const nameless = { name: null } as unknown as { name: string };
    expect(applyAction(book, { kind: 'set', changes: nameless })).toMatchObject({ error: { code: 'book-invalid' } });
    expect(applyAction(book, { kind: 'move', table: 'products', id: 'one', to: 0.5 })).toMatchObject({
      error: { code: 'request-invalid' },
    });
  });

  test('keeps unknown members of a record', () => {
    const marked = { ...product('four'), colour: 'green' };
    expect(done(book, { kind: 'put', table: 'products', record: marked }).book.products[3]).toEqual(marked);
  });

  test('in a faulty book with an id twice, undo still gives back what was there', () => {
    const faulty = { ...book, products: [product('one', 'a'), product('two'), product('one', 'b'), product('three')] };
    const actions: readonly Action[] = [
      { kind: 'remove', table: 'products', id: 'one' },
      { kind: 'remove', table: 'products', id: 'one', at: 2 },
      { kind: 'move', table: 'products', id: 'one', to: 3 },
      { kind: 'move', table: 'products', id: 'one', at: 2, to: 0 },
      { kind: 'put', table: 'products', record: product('one', 'c') },
      { kind: 'put', table: 'products', record: product('one', 'c'), at: 2 },
    ];
    for (const action of actions) {
      const { book: after, inverse } = done(faulty, action);
      expect(after).not.toEqual(faulty);
      const back = done(after, inverse);
      expect(back.book).toEqual(faulty);
      expect(done(back.book, back.inverse).book).toEqual(after);
    }
  });

  test('takes an imported matrix away and gives it back', () => {
    const matrix = { source: 'csv', placeIds: ['a'], durationSec: [[0]], distanceM: [[0]] };
    const withMatrix = done(book, { kind: 'set', changes: { matrix } });
    expect(withMatrix.book.matrix).toEqual(matrix);
    const without = done(withMatrix.book, { kind: 'set', changes: { matrix: null } });
    expect('matrix' in without.book).toBe(false);
    expect(done(without.book, without.inverse).book.matrix).toEqual(matrix);
    expect(done(withMatrix.book, withMatrix.inverse).book).toEqual(book);
  });
});

const place: FillPoint = {
  id: 'shop',
  name: 'Shop',
  what: 'shop',
  at: [-89, 40],
  waterGpm: 20,
  visitMin: 5,
  minutesPerBag: 0.5,
  products: 'all',
};

const anyId = fc.constantFrom('a', 'b', 'c', 'd');
const anyAction: fc.Arbitrary<Action> = fc.letrec<{ action: Action }>((tie) => ({
  action: fc.oneof(
    { maxDepth: 2 },
    fc.record({
      kind: fc.constant('put' as const),
      table: fc.constant('products' as const),
      record: fc.tuple(anyId, fc.string()).map(([id, name]) => product(id, name)),
      at: fc.nat(5),
    }),
    fc.record({
      kind: fc.constant('put' as const),
      table: fc.constant('fillPoints' as const),
      record: anyId.map((id) => ({ ...place, id })),
    }),
    fc.record({
      kind: fc.constant('remove' as const),
      table: fc.constantFrom('products' as const, 'fillPoints' as const),
      id: anyId,
    }),
    fc.record({
      kind: fc.constant('move' as const),
      table: fc.constant('products' as const),
      id: anyId,
      to: fc.nat(5),
    }),
    fc.record({
      kind: fc.constant('set' as const),
      changes: fc.record(
        { name: fc.string(), units: fc.constantFrom('us' as const, 'metric' as const) },
        { requiredKeys: [] },
      ),
    }),
    fc.record({
      kind: fc.constant('several' as const),
      label: fc.string(),
      actions: fc.array(tie('action'), { maxLength: 3 }),
    }),
  ),
})).action;

describe('undo and redo', () => {
  test('the inverse of any row of edits gives the book back, and its inverse gives the edits back', () => {
    fc.assert(
      fc.property(fc.array(anyAction, { maxLength: 12 }), (actions) => {
        const start = emptyBook('b', 'Book');
        let book = start;
        const inverses: Action[] = [];
        for (const action of actions) {
          const applied = applyAction(book, action);
          if (!applied.ok) continue;
          book = applied.value.book;
          inverses.push(applied.value.inverse);
        }
        const end = book;
        const again: Action[] = [];
        for (const inverse of inverses.toReversed()) {
          const undone = done(book, inverse);
          book = undone.book;
          again.push(undone.inverse);
        }
        expect(book).toEqual(start);
        for (const action of again.toReversed()) book = done(book, action).book;
        expect(book).toEqual(end);
      }),
      { numRuns: 300 },
    );
  });
});
