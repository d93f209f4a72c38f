/**
 * Writes the invented books of this folder again: `npm run samples`. The same program always writes the same bytes; a test
 * compares them with what is stored.
 */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { writeBook } from '../../core/book/index.ts';
import { fourDayRound, mixedDay, residentialDay } from './books.ts';

const FOLDER = path.resolve('sample-routes');

const files = [
  ['residential-day.json', residentialDay()],
  ['mixed-day.json', mixedDay()],
  ['four-day-round.json', fourDayRound()],
] as const;

for (const [name, book] of files) {
  await writeFile(path.join(FOLDER, name), writeBook(book), 'utf8');
  process.stdout.write(`${name}: ${book.properties.length} properties\n`);
}
