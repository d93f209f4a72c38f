import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { createStoreFile } from '../../../electron/services/store/index.ts';
import { tableOf } from './figures.ts';
import { largeBook } from './large-book.ts';
import { timeServices } from './services.ts';
import { timeWindow } from './window.ts';

/**
 * Makes an invented book of many lawns and measures what the program takes for it, in the services alone and in the window:
 * npm run bench:load -- [--lawns 10000] [--times 5] [--only services|window]
 *
 * It needs the built program and a Chromium. Milliseconds are by the clock unless a line says otherwise.
 */
const { values } = parseArgs({
  options: {
    lawns: { type: 'string', default: '10000' },
    times: { type: 'string', default: '5' },
    only: { type: 'string' },
  },
});

const times = Number(values.times);
const folder = await mkdtemp(path.join(tmpdir(), 'swardway-load-'));
try {
  const book = largeBook(Number(values.lawns));
  const file = path.join(folder, 'large.swardway');
  const made = await createStoreFile(file, book);
  if (!made.ok) throw new Error(made.error.detail);
  const corners = book.properties.flatMap(({ zones, exclusions }) => [
    ...zones.flatMap(({ shape }) => (shape.kind === 'drawn' ? shape.geometry.coordinates.flat(1) : [])),
    ...exclusions.flatMap(({ geometry }) => geometry.coordinates.flat(1)),
  ]).length;
  console.log(
    `${book.properties.length} lawns, ${book.properties.flatMap((each) => each.zones).length} zones, ` +
      `${corners} corners, file of ${((await stat(file)).size / 1e6).toFixed(1)} MB`,
  );
  // The window first: what the services leave in this process would slow it.
  if (values.only !== 'services') console.log(tableOf(await timeWindow(file, times)));
  if (values.only !== 'window') console.log(tableOf(await timeServices(file, process.cwd(), times)));
} finally {
  await rm(folder, { recursive: true, force: true });
}
