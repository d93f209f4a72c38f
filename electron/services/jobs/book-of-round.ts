import type { Book, Property } from '../../../core/book/index.ts';

/**
 * The book as a thread needs it that works on one round: lawns that the round does not list are there by name and place alone. A thread gets
 * a copy of its own, and copying the outlines of ten thousand lawns holds the host up for a second, for a day of forty. A round for all
 * lawns gets the book as it is. The problem of the round is the same one, with the same fingerprint.
 */
export function bookOfRound(book: Book, roundId: string): Book {
  const round = book.rounds.find((each) => each.id === roundId);
  if (round === undefined || round.propertyIds === 'all') return book;
  const listed = new Set(round.propertyIds);
  return { ...book, properties: book.properties.map((each) => (listed.has(each.id) ? each : bare(each))) };
}

/** Names stay, for plans that still have the lawn. */
function bare({ id, name, address, parking, noTrailer, zones }: Property): Property {
  return {
    id,
    name,
    address,
    parking,
    noTrailer,
    gates: [],
    zones: zones.map((zone) => ({
      id: zone.id,
      name: zone.name,
      shape: { kind: 'stated', areaSqFt: 0, method: '' },
      slopeDeg: 0,
      gateIds: [],
    })),
    exclusions: [],
    cautions: [],
    note: '',
  };
}

/** Lawns that a round may have at most. */
export function lawnsListed(book: Book, roundId: string): number {
  const listed = book.rounds.find((each) => each.id === roundId)?.propertyIds ?? 'all';
  return listed === 'all' ? book.properties.length : listed.length;
}
