import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Book, readBook } from '../../../../core/book/index.ts';
import { measureBook } from '../../../../core/measure/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';

/** The residential day with its first lawns only, and a shift that ends long before the break would begin. */
function shortDay(lawns: number): Book {
  const text = readFileSync(new URL('../../../../sample-routes/residential-day.json', import.meta.url), 'utf8');
  const read = readBook(text, 'residential-day.json');
  if (!read.ok) throw new Error(read.error.detail);
  const { book } = read.value;
  const rigs = book.rigs.map((rig) => ({ ...rig, shiftMin: 70, overtimeMin: 0 }));
  return { ...book, rigs, properties: book.properties.slice(0, lawns) };
}

function visitsPlaced(lawns: number): number {
  const book = shortDay(lawns);
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const built = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
  if (!built.ok) throw new Error(built.error.detail);
  const { routes } = solve(built.value, { seed: 1, iterations: 400 });
  return routes.reduce((sum, route) => sum + route.visits.length, 0);
}

test('a day that is over before its break keeps no time for one, however many lawns wait', () => {
  const few = visitsPlaced(8);
  expect(few).toBeGreaterThan(0);
  expect(visitsPlaced(28)).toBeGreaterThanOrEqual(few);
});
