import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Book, emptyBook, type Property } from '../../../core/book/index.ts';
import { type Action, applyAction } from '../../../core/edit/index.ts';

const property = (id: string, note: string): Property => ({
  id,
  name: id,
  address: '',
  parking: [-83, 40],
  noTrailer: false,
  gates: [],
  zones: [],
  exclusions: [],
  cautions: [],
  note,
});
const bookOf = (ids: readonly string[]): Book => ({
  ...emptyBook('b', 'Book'),
  properties: ids.map((id) => property(id, 'before')),
});
const id = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h');
const action: fc.Arbitrary<Action> = fc.oneof(
  {
    weight: 8,
    arbitrary: id.map((each): Action => ({ kind: 'put', table: 'properties', record: property(each, 'after') })),
  },
  { weight: 1, arbitrary: id.map((each): Action => ({ kind: 'remove', table: 'properties', id: each })) },
  {
    weight: 1,
    arbitrary: id.map(
      (each): Action => ({ kind: 'put', table: 'properties', record: property(each, 'in'), at: 0, insert: true }),
    ),
  },
);

/** One edit after the other, each as a step of its own. */
function oneByOne(book: Book, actions: readonly Action[]): Book | null {
  let after = book;
  for (const each of actions) {
    const applied = applyAction(after, each);
    if (!applied.ok) return null;
    after = applied.value.book;
  }
  return after;
}

describe('several edits at once', () => {
  it('do the same as one by one, and are undone whole, also in books that have an id twice', () => {
    fc.assert(
      fc.property(fc.array(id, { maxLength: 6 }), fc.array(action, { maxLength: 30 }), (ids, actions) => {
        const book = bookOf(ids);
        const together = applyAction(book, { kind: 'several', label: 'Import', actions });
        expect(together.ok ? together.value.book : null).toEqual(oneByOne(book, actions));
        if (!together.ok) return;
        const back = applyAction(together.value.book, together.value.inverse);
        expect(back.ok && back.value.book).toEqual(book);
      }),
      { numRuns: 500 },
    );
  });

  it('are refused whole where one of them is', () => {
    const good = [...'abcdefghij'].map(
      (each): Action => ({ kind: 'put', table: 'properties', record: property(each, '') }),
    );
    const bad: Action = { kind: 'put', table: 'properties', record: { ...property('k', ''), parking: [999, 0] } };
    const book = bookOf([]);
    expect(applyAction(book, { kind: 'several', label: 'Import', actions: [...good, bad] })).toMatchObject({
      ok: false,
      error: { code: 'book-invalid', where: expect.stringContaining('property k') },
    });
  });
});
