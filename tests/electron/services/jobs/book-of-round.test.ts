import { describe, expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { bookOfRound, lawnsListed } from '../../../../electron/services/jobs/book-of-round.ts';
import { sampleBook } from '../../../support/samples.ts';

/** The mixed day with a round for some of its lawns. */
function bookWithList(count: number): Book {
  const book = sampleBook('mixed-day');
  const [round] = book.rounds;
  if (round === undefined) throw new Error('the sample has a round');
  const propertyIds = book.properties.slice(0, count).map(({ id }) => id);
  return { ...book, rounds: [{ ...round, propertyIds }] };
}

describe('the book as a thread gets it that works on one round', () => {
  const book = bookWithList(3);
  const roundId = book.rounds[0]?.id ?? '';

  test('has the outlines of the lawns of the round alone, and the names of all', () => {
    const part = bookOfRound(book, roundId);
    expect(part.properties.map(({ id, name, parking }) => ({ id, name, parking }))).toEqual(
      book.properties.map(({ id, name, parking }) => ({ id, name, parking })),
    );
    expect(part.properties.slice(0, 3)).toEqual(book.properties.slice(0, 3));
    expect(part.properties.flatMap((each) => each.zones.map(({ name }) => name))).toEqual(
      book.properties.flatMap((each) => each.zones.map(({ name }) => name)),
    );
    const others = JSON.stringify(part.properties.slice(3));
    expect(others).not.toContain('coordinates');
    // A lawn that is only named takes a few hundred bytes, however it is drawn.
    expect(others.length / (book.properties.length - 3)).toBeLessThan(600);
    expect(lawnsListed(book, roundId)).toBe(3);
  });

  test('makes the same problem', () => {
    const whole = buildProblem(book, roundId);
    const part = buildProblem(bookOfRound(book, roundId), roundId);
    if (!whole.ok || !part.ok) throw new Error('the round can be planned');
    expect(part.value.hash).toBe(whole.value.hash);
    expect(part.value.tasks).toEqual(whole.value.tasks);
  });

  test('is the book itself for a round of all lawns, and for one that is not there', () => {
    const all = { ...book, rounds: book.rounds.map((each) => ({ ...each, propertyIds: 'all' as const })) };
    expect(bookOfRound(all, roundId)).toBe(all);
    expect(lawnsListed(all, roundId)).toBe(all.properties.length);
    expect(bookOfRound(book, 'no such round')).toBe(book);
  });
});
