import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as v from 'valibot';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { settingsSchema } from '../../core/contract/index.ts';
import { createRecentStore, createSettingsStore, jsonFile } from '../../electron/services/settings/index.ts';
import { createStoreFile, openStore } from '../../electron/services/store/index.ts';
import { readStreetFile } from '../../electron/services/streets/index.ts';
import { openTally, WHOLE_FUZZ } from '../support/fuzz.ts';
import { mutate } from '../support/mutate.ts';
import { sampleBook } from '../support/samples.ts';
import { STREETS_TEXT } from './seeds.ts';

/** Mutated files of each kind; a book file is a database, which takes longer to open. */
const ROUNDS = WHOLE_FUZZ ? 2000 : 40;
/** No file may take longer, ms. */
const LONGEST_MS = 2000;

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-fuzz-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Uses mutations of a file as the host does; `use` says what became of each. */
async function fuzz(name: string, seed: Uint8Array, use: (file: string) => Promise<string>): Promise<void> {
  const file = path.join(folder, name);
  await writeFile(file, seed);
  expect(await use(file), `${name} as it was`).toBe('read');
  const tally = openTally(`host, ${name}`);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const ending of ['', '-wal', '-journal', '.unreadable']) await rm(`${file}${ending}`, { force: true });
    await writeFile(file, mutate(seed, round));
    const begin = performance.now();
    const outcome = await use(file);
    const tookMs = performance.now() - begin;
    expect(tookMs, `${name}, seed ${round}`).toBeLessThan(LONGEST_MS);
    tally.note(outcome, tookMs);
  }
  expect(tally.close().size).toBeGreaterThan(1);
}

describe('mutated files that the host opens', { timeout: 900_000 }, () => {
  it(`a book file: ${ROUNDS} of them; one that is refused keeps its bytes`, async () => {
    const made = path.join(folder, 'made.swardway');
    const { properties, ...book } = sampleBook('residential-day');
    expect((await createStoreFile(made, { ...book, properties: properties.slice(0, 2) })).ok).toBe(true);
    await fuzz('book.swardway', await readFile(made), async (file) => {
      const before = await readFile(file);
      const open = await openStore(file);
      if (!open.ok) {
        expect(
          ['not-a-book', 'newer-version', 'book-damaged', 'wrong-schema', 'format-invalid'],
          open.error.detail,
        ).toContain(open.error.code);
        expect(open.error.hint.length).toBeGreaterThan(10);
        if (open.error.code === 'not-a-book' || open.error.code === 'newer-version')
          expect((await readFile(file)).equals(before)).toBe(true);
        return open.error.code;
      }
      expect((await open.value.close()).ok).toBe(true);
      return 'read';
    });
  });

  it(`settings and recent books: ${ROUNDS} of each`, async () => {
    const settings = createSettingsStore(folder);
    const ours = JSON.stringify({ ...(await settings.read()), largeText: true });
    await fuzz('settings.json', Buffer.from(ours), async (file) => {
      const isJson = (await jsonFile(file).read()) !== null;
      const read = await settings.read();
      expect(v.safeParse(settingsSchema, read).success).toBe(true);
      return isJson ? 'read' : 'put aside';
    });
    const recent = createRecentStore(folder);
    const list = JSON.stringify([{ file: '/a.swardway', name: 'A', openedAt: '2026-11-27T00:00:00Z' }]);
    await fuzz('recent.json', Buffer.from(list), async () => ((await recent.list()).length > 0 ? 'read' : 'none'));
  });

  it(`a street file: ${ROUNDS} of them`, async () => {
    await fuzz('streets.geojson', Buffer.from(STREETS_TEXT), async (file) => {
      const read = await readStreetFile(file);
      return read.ok ? 'read' : read.error.code;
    });
  });
});
