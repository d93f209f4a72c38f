import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type Book, emptyBook } from '../../../core/book/index.ts';
import { type Action, applyAction } from '../../../core/edit/index.ts';
import {
  APPLICATION_ID,
  type BookStore,
  createStoreFile,
  MIGRATIONS,
  openStore,
} from '../../../electron/services/store/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { temporaryFolder } from '../temporary.ts';

const NOW = '2027-03-16T07:00:00.000Z';

async function newBook(book: Book = emptyBook('b', 'Book')): Promise<string> {
  const file = path.join(temporaryFolder(), 'book.swardway');
  const made = await createStoreFile(file, book);
  if (!made.ok) throw new Error(made.error.detail);
  return file;
}

async function open(file: string): Promise<BookStore> {
  const opened = await openStore(file);
  if (!opened.ok) throw new Error(`${opened.error.code}: ${opened.error.detail}`);
  return opened.value;
}

/** Applies and stores one edit on what the store held when it was opened. */
async function save(store: BookStore, action: Action, revision = store.stored.revision + 1) {
  const applied = applyAction(store.stored.book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  const { book: after, inverse, label } = applied.value;
  return store.saveEdit({ before: store.stored.book, after, revision, at: NOW, label, action, inverse });
}

const RENAME: Action = { kind: 'set', changes: { name: 'Renamed' } };

describe('a book file', () => {
  test('gives a whole sample book back as it was', async () => {
    const book = sampleBook('mixed-day');
    const store = await open(await newBook(book));
    expect(store.stored.book).toEqual(book);
    expect(store.stored.revision).toBe(0);
    await store.close();
  });

  test('has its own application id and the version of the newest migration', async () => {
    const bytes = readFileSync(await newBook());
    expect(bytes.readUInt32BE(68)).toBe(APPLICATION_ID >>> 0);
    expect(bytes.readUInt32BE(60)).toBe(MIGRATIONS.length);
  });

  test('holds an edit as soon as the answer is there, in order, with its label', async () => {
    const file = await newBook(sampleBook('residential-day'));
    const store = await open(file);
    expect(await save(store, RENAME)).toEqual({ ok: true, value: true });
    await store.close();
    const again = await open(file);
    expect(again.stored.book.name).toBe('Renamed');
    expect(again.stored.revision).toBe(1);
    expect(again.stored.savedAt).toBe(NOW);
    expect(again.stored.book.properties.length).toBe(28);
    await again.close();
  });

  test('keeps the order of records through adding, moving and removing', async () => {
    const file = await newBook(sampleBook('mixed-day'));
    const first = await open(file);
    const { machines } = first.stored.book;
    const action: Action = {
      kind: 'several',
      label: 'Shuffle',
      actions: [
        { kind: 'put', table: 'machines', record: { ...machines[0]!, id: 'third', name: 'Third' }, at: 0 },
        { kind: 'move', table: 'machines', id: machines[0]!.id, to: 2 },
        { kind: 'remove', table: 'handMethods', id: 'reel-200' },
      ],
    };
    await save(first, action);
    await first.close();
    const again = await open(file);
    expect(again.stored.book.machines.map((each) => each.id)).toEqual(['third', 'ride-on-49', 'stand-on-35']);
    expect(again.stored.book.handMethods.map((each) => each.id)).toEqual(['push-spreader']);
    await again.close();
  });

  test('is copied whole, with what is still in its log', async () => {
    const file = await newBook(sampleBook('residential-day'));
    const store = await open(file);
    await save(store, RENAME);
    const copy = path.join(path.dirname(file), 'copy.swardway');
    expect(await store.copyTo(copy)).toEqual({ ok: true, value: true });
    await store.close();
    const copied = await open(copy);
    expect(copied.stored.book.name).toBe('Renamed');
    expect(copied.stored.book.properties.length).toBe(28);
    await copied.close();
  });

  test('becomes one file again when it is closed', async () => {
    const file = await newBook();
    const store = await open(file);
    await save(store, RENAME);
    await store.close();
    expect(() => statSync(`${file}-wal`)).toThrow();
  });
});

describe('a file that cannot be used is refused with code, place and remedy', () => {
  async function failure(file: string) {
    const opened = await openStore(file);
    if (opened.ok) {
      await opened.value.close();
      throw new Error('it was opened');
    }
    expect(opened.error.where).toContain(path.basename(file));
    expect(opened.error.hint.length).toBeGreaterThan(10);
    return opened.error.code;
  }

  test('one that is not there', async () => {
    expect(await failure(path.join(temporaryFolder(), 'gone.swardway'))).toBe('file-not-found');
  });

  test('one that is something else, left byte for byte', async () => {
    const file = path.join(temporaryFolder(), 'text.swardway');
    writeFileSync(file, 'lawns, lawns, lawns');
    expect(await failure(file)).toBe('not-a-book');
    expect(readFileSync(file, 'utf8')).toBe('lawns, lawns, lawns');
  });

  test('one of a newer version, left byte for byte', async () => {
    const file = await newBook();
    const bytes = readFileSync(file);
    bytes.writeUInt32BE(MIGRATIONS.length + 1, 60);
    writeFileSync(file, bytes);
    expect(await failure(file)).toBe('newer-version');
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test('one that another program holds', async () => {
    const file = await newBook();
    const holder = await open(file);
    expect(await failure(file)).toBe('book-locked');
    expect(await save(holder, RENAME)).toEqual({ ok: true, value: true });
    await holder.close();
  });

  test('one whose pages are damaged', async () => {
    const file = await newBook(sampleBook('residential-day'));
    const bytes = readFileSync(file);
    bytes.fill(0xa5, 8192, bytes.length - 4096);
    writeFileSync(file, bytes);
    expect(await failure(file)).toBe('book-damaged');
  });
});

describe('a file that goes wrong while it is open', () => {
  test('deleted meanwhile: the edit is refused and said to be lost', async () => {
    const file = await newBook();
    const store = await open(file);
    rmSync(file);
    expect(await save(store, RENAME)).toMatchObject({ ok: false, error: { code: 'book-vanished' } });
    await store.close();
  });

  test('write-protected: it opens, reads, and refuses edits', async (context) => {
    if (process.getuid?.() === 0)
      context.skip('root may write to write-protected files, so this cannot be tried as root');
    const file = await newBook(sampleBook('residential-day'));
    chmodSync(file, 0o444);
    const store = await open(file);
    expect(store.readOnlyBecause).not.toBeNull();
    expect(store.stored.book.properties.length).toBe(28);
    expect(await save(store, RENAME)).toMatchObject({ ok: false, error: { code: 'book-read-only' } });
    await store.close();
  });

  test('a full disk: the edit is refused, and what was there stays', async (context) => {
    const folder = smallDisk();
    if (folder === null) context.skip('a small disk can be mounted by root on Linux only');
    const file = path.join(folder as string, 'book.swardway');
    expect((await createStoreFile(file, emptyBook('b', 'Small'))).ok).toBe(true);
    const store = await open(file);
    const note = 'x'.repeat(3_000_000);
    expect(await save(store, { kind: 'set', changes: { note } })).toMatchObject({
      ok: false,
      error: { code: 'disk-full' },
    });
    expect(await save(store, RENAME)).toEqual({ ok: true, value: true });
    await store.close();
    const again = await open(file);
    expect([again.stored.book.name, again.stored.book.note]).toEqual(['Renamed', '']);
    await again.close();
  });
});

/** A disk of one mebibyte in memory, or null where none may be mounted. */
function smallDisk(): string | null {
  const folder = mkdtempSync(path.join(tmpdir(), 'swardway-disk-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder]).status === 0;
  onTestFinished(() => {
    if (mounted) spawnSync('umount', ['-l', folder]);
    rmSync(folder, { recursive: true, force: true });
  });
  return mounted ? folder : null;
}

/** Kills of a writing process in one run; the long suite of the reliability work repeats this far more often. */
const KILLS = 6;

describe('a process that is killed while it writes', () => {
  test(`loses nothing that it was told is stored, ${KILLS} times`, { timeout: 90_000 }, async () => {
    const source = path.resolve('tests/electron/store/writer.ts');
    execFileSync(process.execPath, ['electron/tools/run.mjs', source, '--only-build'], { stdio: 'ignore' });
    const file = await newBook();
    for (let round = 0; round < KILLS; round += 1) {
      const told = await killWhileWriting(file, 120 + ((round * 197) % 400));
      const store = await open(file);
      expect(store.stored.revision).toBeGreaterThanOrEqual(told);
      // Each edit writes its number into two places at once: both or neither.
      const { note, prices } = store.stored.book;
      expect(note).toBe(store.stored.revision === 0 ? '' : String(store.stored.revision));
      expect(prices.perMile).toBe(store.stored.revision);
      await store.close();
    }
  });
});

/** Starts a writer, kills it some time after its first edit, and returns the last revision that it was told is stored. */
function killWhileWriting(file: string, afterMs: number): Promise<number> {
  return new Promise((done, fail) => {
    const writer = spawn(process.execPath, ['dist/tools/writer.mjs', file], { stdio: ['ignore', 'pipe', 'inherit'] });
    let told = 0;
    let timer: NodeJS.Timeout | null = null;
    writer.stdout.setEncoding('utf8').on('data', (text: string) => {
      for (const line of text.trim().split('\n')) told = Math.max(told, Number(line));
      timer ??= setTimeout(() => writer.kill('SIGKILL'), afterMs);
    });
    writer.on('error', fail);
    writer.on('exit', (code, signal) => {
      if (signal === 'SIGKILL') done(told);
      else fail(new Error(`the writer ended by itself with ${code}`));
    });
  });
}
