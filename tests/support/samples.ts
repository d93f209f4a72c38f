import { readFileSync } from 'node:fs';
import { type Book, readBook } from '../../core/book/index.ts';
import { buildProblem, type Problem } from '../../core/plan/problem/index.ts';

export const SAMPLE_NAMES = ['residential-day', 'mixed-day', 'four-day-round', 'creek-town'] as const;
export type SampleName = (typeof SAMPLE_NAMES)[number];

/** The JSON text of an invented book of sample-routes. */
export function sampleText(name: SampleName): string {
  return readFileSync(new URL(`../../sample-routes/${name}.json`, import.meta.url), 'utf8');
}

export function sampleBook(name: SampleName): Book {
  const read = readBook(sampleText(name), `${name}.json`);
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}

/** A sample with its first eight lawns alone, which is planned in a third of the time. */
export function smallBook(name: SampleName): Book {
  const book = sampleBook(name);
  return { ...book, properties: book.properties.slice(0, 8) };
}

export function problemOf(book: Book, roundId = book.rounds[0]?.id ?? ''): Problem {
  const built = buildProblem(book, roundId);
  if (!built.ok) throw new Error(built.error.detail);
  return built.value;
}
