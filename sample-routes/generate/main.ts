/**
 * Writes the invented books of this folder again: `npm run samples`. The same program always writes the same bytes; a test
 * compares them with what is stored.
 */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { writeBook } from '../../core/book/index.ts';
import { fourDayRound, mixedDay, residentialDay } from './books.ts';
import { CREEK_TOWN_ROADS, creekTown } from './creek-town.ts';
import { extractOf } from './extract.ts';
import { writeRoads } from './roads.ts';

const FOLDER = path.resolve('sample-routes');

const roads = writeRoads(CREEK_TOWN_ROADS);
await writeFile(path.join(FOLDER, 'creek-town.osm'), roads, 'utf8');

const files = [
  ['residential-day.json', residentialDay()],
  ['mixed-day.json', mixedDay()],
  ['four-day-round.json', fourDayRound()],
  ['creek-town.json', creekTown(await extractOf('creek-town.osm', roads))],
] as const;

for (const [name, book] of files) {
  await writeFile(path.join(FOLDER, name), writeBook(book), 'utf8');
  process.stdout.write(`${name}: ${book.properties.length} properties\n`);
}
