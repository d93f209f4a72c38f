import { copyFile, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Result } from '../../../../core/base/index.ts';
import { type Book, emptyBook } from '../../../../core/book/index.ts';
import { createBackups } from '../../../../electron/services/backups/index.ts';
import { writeWhole } from '../../../../electron/services/files/index.ts';
import type { Context } from '../../../../electron/services/handlers/context.ts';
import { deliver } from '../../../../electron/services/handlers/deliver.ts';
import type { Client } from '../../../../electron/services/host-port.ts';
import { createTileCache } from '../../../../electron/services/imagery/tile-cache.ts';
import { importRoads } from '../../../../electron/services/roads/import-roads.ts';
import { createSettingsStore } from '../../../../electron/services/settings/index.ts';
import { createStoreFile, openConnection, openStore } from '../../../../electron/services/store/index.ts';
import { createStreets } from '../../../../electron/services/streets/index.ts';
import { STREETS_TEXT } from '../../../fuzz/seeds.ts';
import { begin, disk } from '../../support/failing-disk.ts';

vi.mock('node:fs/promises', async (original) => {
  const { failingDisk } = await import('../../support/failing-disk.ts');
  return failingDisk(await original());
});

const WHOLE = process.env.npm_lifecycle_event === 'test:crash';
let folder = '';
beforeEach(async () => {
  begin();
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-disk-'));
});
afterEach(async () => {
  begin();
  await rm(folder, { recursive: true, force: true });
});

/** One kind of writing. `state` says what is there now, in words, having looked at all of it; half of anything is an error. */
type Work = {
  readonly name: string;
  readonly before: () => Promise<void>;
  readonly write: () => Promise<Result<unknown>>;
  readonly state: () => Promise<string>;
  /** What is done for the sake of speed alone: a failure is no failure for who asked. */
  readonly mayFail?: true;
};

const at = (...names: readonly string[]): string => path.join(folder, ...names);
const must = async <T>(result: Promise<Result<T>> | Result<T>): Promise<T> => {
  const found = await result;
  if (!found.ok) throw new Error(`${found.error.code}: ${found.error.detail}`);
  return found.value;
};
const bookNamed = (name: string): Book => emptyBook(name, name);

/** The name of the book in a file, which is sound in whole; 'none' where there is no file. */
async function nameIn(file: string): Promise<string> {
  const names: readonly string[] = await readdir(path.dirname(file)).catch(() => []);
  if (!names.includes(path.basename(file))) return 'none';
  const connection = await openConnection(file, 'frozen');
  expect(await connection.all('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
  const [row] = await connection.all("SELECT json FROM member WHERE name = 'name'");
  await connection.close();
  return JSON.parse(String(row?.json)) as string;
}

const clock = (): Date => new Date('2026-11-27T12:00:00Z');
const backups = () => createBackups(at('backups'), clock);
const theBackup = async (): Promise<string> => (await backups().list(at('book.swardway')))[0]?.backupId ?? '';

async function backUp(): Promise<Result<unknown>> {
  const store = await must(openStore(at('book.swardway')));
  const taken = await backups().take({ store, revision: 7, properties: 0 });
  await store.close();
  return taken;
}

/** The system's answers: full, broken, forbidden. Each at every step where all is asked for, otherwise one after the other. */
const CODES: readonly (readonly [readonly string[]])[] = WHOLE
  ? [[['ENOSPC']], [['EIO']], [['EACCES']]]
  : [[['ENOSPC', 'EIO', 'EACCES']]];

const SIZES = [100, 300_000] as const;
const ROADS_READ = `{ kind: 'read', bytes: Buffer.from('new'.repeat(999)), about: {} }`;
const PAGE: Client = { id: 'page', send: () => undefined };
/** A host whose dialog answers with a file of the folder, and that has no book open. */
const SAVING_HOST = {
  port: { chooseTarget: async (_page: unknown, name: string) => ({ kind: 'file', file: at(name) }) },
  library: { isOpen: async () => false },
} as unknown as Context;
const WORKS: readonly Work[] = [
  {
    name: 'a file for other programs',
    before: () => writeFile(at('out.csv'), 'old'.repeat(SIZES[0])),
    write: () => writeWhole(at('out.csv'), 'new'.repeat(SIZES[1])),
    state: async () => oldOrNew(await readFile(at('out.csv'), 'utf8')),
  },
  {
    name: 'settings',
    before: async () => void (await must(createSettingsStore(folder).write({ units: 'us' }))),
    write: () => createSettingsStore(folder).write({ units: 'metric' }),
    state: async () => ((await createSettingsStore(folder).read()).units === 'us' ? 'old' : 'new'),
  },
  {
    name: 'a new book over an old one',
    before: async () => void (await must(createStoreFile(at('book.swardway'), bookNamed('old')))),
    write: () => createStoreFile(at('book.swardway'), bookNamed('new'), true),
    state: () => nameIn(at('book.swardway')),
  },
  {
    name: 'a copy of a book over an old one',
    before: async () => {
      await must(createStoreFile(at('book.swardway'), bookNamed('new')));
      await must(createStoreFile(at('copy.swardway'), bookNamed('old')));
    },
    write: async () => {
      const store = await must(openStore(at('book.swardway')));
      const copied = await store.copyTo(at('copy.swardway'));
      await store.close();
      return copied;
    },
    state: async () => {
      expect(await nameIn(at('book.swardway'))).toBe('new');
      return nameIn(at('copy.swardway'));
    },
  },
  {
    name: 'a backup',
    before: async () => void (await must(createStoreFile(at('book.swardway'), bookNamed('book')))),
    write: backUp,
    state: async () => {
      expect(await nameIn(at('book.swardway'))).toBe('book');
      const names = (await readdir(at('backups'), { recursive: true }).catch(() => [])).filter((name) =>
        /[/\\][^.][^/\\]*\.swardway$/.test(name),
      );
      for (const name of names) expect(await nameIn(at('backups', name))).toBe('book');
      return names.length === 0 ? 'old' : 'new';
    },
  },
  ...[false, true].map(
    (keepOld): Work => ({
      name: `a backup in the place of a book${keepOld ? ' that is damaged, which is set aside with its log' : ''}`,
      before: async () => {
        await must(createStoreFile(at('book.swardway'), bookNamed('new')));
        await must(backUp());
        await must(createStoreFile(at('book.swardway'), bookNamed('old'), true));
        if (keepOld) await writeFile(at('book.swardway-wal'), 'its log');
      },
      write: async () => backups().restore(at('book.swardway'), await theBackup(), keepOld),
      state: async () => {
        const name = await nameIn(at('book.swardway'));
        const names = (await readdir(folder)).sort();
        const asides = names.filter((each) => each.includes('set-aside') && !each.endsWith('-wal'));
        if (!keepOld) expect(asides).toEqual([]);
        if (name === 'new') {
          // A log beside a book that it does not belong to would be played into it.
          expect(names).not.toContain('book.swardway-wal');
          if (keepOld) expect(await nameIn(at(asides[0] ?? 'nothing'))).toBe('old');
        }
        if (keepOld) expect(names.filter((each) => each.endsWith('-wal'))).toHaveLength(1);
        return name;
      },
    }),
  ),
  {
    name: 'a book of the first version, brought up',
    before: () => copyFile('tests/fixtures/books/version-1.swardway', at('book.swardway')),
    write: async () => {
      const store = await openStore(at('book.swardway'));
      if (store.ok) await store.value.close();
      return store;
    },
    state: async () => {
      const backup = await nameIn(at('book.swardway.version-1.backup'));
      const bytes = await readFile(at('book.swardway'));
      // The version stands in bytes 60 to 63: "Database File Format", part 1.3, sqlite.org/fileformat2.html.
      const version = bytes.readUInt32BE(60);
      if (version > 1) expect(backup).toBe('Stored book');
      return version > 1 ? 'new' : 'old';
    },
  },
  {
    name: 'a street file',
    before: async () => undefined,
    write: async () => createStreets(folder).load('town', JSON.parse(STREETS_TEXT)),
    state: async () => ((await createStreets(folder).list()).length === 0 ? 'old' : 'new'),
  },
  {
    name: 'the roads of an extract over older ones',
    before: async () => {
      await writeFile(at('roads.swardway-roads'), 'old'.repeat(SIZES[0]));
      // The thread that reads an extract is not what is tried here: this one has read it at once.
      await writeFile(at('reader.cjs'), `require('node:worker_threads').parentPort.postMessage(${ROADS_READ});`);
    },
    write: () => importRoads(at('extract.pbf'), at('roads.swardway-roads'), { workerFile: at('reader.cjs') }),
    state: async () => oldOrNew(await readFile(at('roads.swardway-roads'), 'utf8')),
  },
  {
    name: 'a sheet as PDF over an older one',
    before: () => writeFile(at('sheet.pdf'), 'old'.repeat(SIZES[0])),
    write: () => deliver(SAVING_HOST, PAGE, 'sheet.pdf', () => ({ ok: true, value: Buffer.from('new'.repeat(999)) })),
    state: async () => oldOrNew(await readFile(at('sheet.pdf'), 'utf8')),
  },
  {
    name: 'a tile of the map',
    before: async () => undefined,
    write: async () => {
      await createTileCache(at('tiles'), 1e6).keep(
        'set',
        { z: 1, x: 1, y: 0 },
        Buffer.from('new'.repeat(999)),
        clock(),
      );
      return { ok: true, value: true };
    },
    state: async () => {
      const tile = await createTileCache(at('tiles'), 1e6).read('set', { z: 1, x: 1, y: 0 });
      return tile === null ? 'old' : oldOrNew(Buffer.from(tile.bytes).toString());
    },
    mayFail: true,
  },
];

function oldOrNew(text: string): string {
  if (/^(old)+$/.test(text)) return 'old';
  expect(text).toMatch(/^(new)+$/);
  expect(text.length % 3).toBe(0);
  return 'new';
}

async function leftovers(): Promise<readonly string[]> {
  return (await readdir(folder, { recursive: true })).filter((name) => /\.new(-\w+)?$/.test(name));
}

describe.each(WORKS)('writing $name', ({ before, write, state, mayFail }) => {
  const clean = async (): Promise<void> => {
    begin();
    await rm(folder, { recursive: true, force: true });
    await mkdir(folder);
    await before();
  };
  const countSteps = async (): Promise<readonly string[]> => {
    await clean();
    begin();
    await must(write());
    const { steps } = disk;
    begin();
    expect(await state()).toBe('new');
    return steps;
  };

  test('goes through a new file, flushed, renamed, its folder flushed', async () => {
    const steps = await countSteps();
    const rename = steps.findLastIndex((each) => each.startsWith('rename '));
    expect(
      steps.slice(0, rename).some((each) => each.startsWith('fsync ')),
      steps.join(', '),
    ).toBe(true);
    expect(
      steps.slice(rename).some((each) => each.startsWith('fsync folder ')),
      steps.join(', '),
    ).toBe(true);
  });

  test.each(CODES)('that fails with %s at any step leaves old or new, nothing half, and works again', async (codes) => {
    const steps = await countSteps();
    for (const [number, name] of steps.entries()) {
      const code = codes[number % codes.length] ?? '';
      const label = `${code} at step ${number}, ${name}`;
      await clean();
      begin(number, code);
      const written = await write();
      begin();
      const now = await state();
      if (written.ok && mayFail === undefined) expect(now, label).toBe('new');
      if (!written.ok) {
        const isLast = name.startsWith('fsync folder');
        if (!isLast) expect(now, label).not.toBe('new');
        expect(['disk-full', 'file-not-writable', 'file-not-readable'], label).toContain(written.error.code);
        if (code === 'ENOSPC' && !isLast) expect(written.error.code, label).toBe('disk-full');
      }
      expect(await leftovers(), label).toEqual([]);
      await must(write());
      expect(await state(), label).toBe('new');
    }
  });

  test('that ends at any step, with the program, leaves old or new, nothing half', async () => {
    const steps = await countSteps();
    for (const number of steps.keys()) {
      await clean();
      begin(number, 'death');
      await write().catch(() => undefined);
      begin();
      expect(await state(), `dead at step ${number}, ${steps[number]}`).toMatch(/^(old|new)$/);
      await must(write());
      expect(await state()).toBe('new');
    }
  });
});
