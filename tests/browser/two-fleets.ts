import type { Book } from '../../core/book/index.ts';

/** The book with two fleets to compare: all its rigs, or the first one alone. */
export function withTwoFleets(book: Book): Book {
  const rigIds = book.rigs.map((rig) => rig.id);
  const fleet = { fixedPerSeason: 0, note: '' };
  return {
    ...book,
    fleets: [
      { ...fleet, id: 'both', name: 'Both rigs', rigIds },
      { ...fleet, id: 'one', name: 'The first alone', rigIds: rigIds.slice(0, 1) },
    ],
  };
}
