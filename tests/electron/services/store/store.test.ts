import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Book, emptyBook, writeBook } from '../../../../core/book/index.ts';
import { type Action, applyAction } from '../../../../core/edit/index.ts';
import { alteredVersions, keepRecord } from '../../../../core/records/index.ts';
import {
  type BookStore,
  createStoreFile,
  openConnection,
  openStore,
} from '../../../../electron/services/store/index.ts';
import { DONE, draftOf, recordBook } from '../../../core/records/record-book.ts';
import { SAMPLE_NAMES, sampleBook } from '../../../support/samples.ts';
import { numberedEdit } from '../../support/numbered-edit.ts';

let folder = '';
const opened: BookStore[] = [];

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-store-'));
});
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close();
  await rm(folder, { recursive: true, force: true });
});

const at = (name: string) => path.join(folder, name);

async function open(file: string): Promise<BookStore> {
  const store = await openStore(file);
  if (!store.ok) throw new Error(`${store.error.code}: ${store.error.detail}`);
  opened.push(store.value);
  return store.value;
}

async function close(store: BookStore): Promise<void> {
  opened.splice(opened.indexOf(store), 1);
  expect(await store.close()).toEqual({ ok: true, value: true });
}

/** Applies edits one by one, as the library does. */
async function edit(store: BookStore, book: Book, actions: readonly Action[]): Promise<Book> {
  let now = book;
  for (const [index, action] of actions.entries()) {
    const applied = applyAction(now, action);
    if (!applied.ok) throw new Error(applied.error.detail);
    const saved = await store.saveEdit({
      before: now,
      after: applied.value.book,
      revision: store.stored.revision + index + 1,
      at: '2026-03-01T12:00:00.000Z',
      label: applied.value.label,
      action,
      inverse: applied.value.inverse,
    });
    expect(saved).toEqual({ ok: true, value: true });
    now = applied.value.book;
  }
  return now;
}

describe('a book file', () => {
  test.each(SAMPLE_NAMES)('gives the sample %s back as it was', async (name) => {
    const book = sampleBook(name);
    expect(await createStoreFile(at('a.swardway'), book)).toEqual({ ok: true, value: true });
    const store = await open(at('a.swardway'));
    expect(writeBook(store.stored.book)).toBe(writeBook(book));
    expect(store.stored).toMatchObject({ revision: 0, savedAt: null, plans: [], issues: [] });
  });

  test('leaves no other file behind when it is made', async () => {
    await createStoreFile(at('a.swardway'), emptyBook('a', 'A'));
    expect(await readdir(folder)).toEqual(['a.swardway']);
  });

  test('is not made over another file unless that is asked for', async () => {
    await createStoreFile(at('a.swardway'), emptyBook('first', 'First'));
    const second = await createStoreFile(at('a.swardway'), emptyBook('second', 'Second'));
    expect(second).toMatchObject({
      ok: false,
      error: { code: 'not-allowed', where: expect.stringContaining('a.swardway') },
    });
    const first = await open(at('a.swardway'));
    expect(first.stored.book.id).toBe('first');
    await close(first);
    expect((await createStoreFile(at('a.swardway'), emptyBook('second', 'Second'), true)).ok).toBe(true);
    expect((await open(at('a.swardway'))).stored.book.id).toBe('second');
  });

  test('keeps an application record with its corrected version, word by word, and takes no edit of either', async () => {
    const keep = (book: Book, why: string): Action => {
      const kept = keepRecord(book, draftOf(book), { writtenAt: '2027-03-16T17:05', writtenBy: 'Kim Example', why });
      if (!kept.ok) throw new Error(kept.error.detail);
      return kept.value.action;
    };
    const book = recordBook();
    await createStoreFile(at('a.swardway'), book);
    const store = await open(at('a.swardway'));
    const first = keep(book, '');
    const later: Action = { kind: 'put', table: 'visits', record: { ...DONE, arriveMin: 560 } };
    const changed = [first, later].reduce((now, action) => {
      const applied = applyAction(now, action);
      return applied.ok ? applied.value.book : now;
    }, book);
    const third = await edit(store, book, [first, later, keep(changed, 'came later')]);
    expect(third.applicationRecords).toHaveLength(2);
    await close(store);
    const again = await open(at('a.swardway'));
    expect(again.stored.book.applicationRecords).toEqual(third.applicationRecords);
    expect(alteredVersions(again.stored.book)).toEqual([]);
    const [record] = again.stored.book.applicationRecords;
    for (const action of [
      { kind: 'remove', table: 'applicationRecords', id: record?.id ?? '' },
      { kind: 'put', table: 'applicationRecords', record: { ...record, writtenBy: 'Somebody' } },
    ] as readonly Action[]) {
      expect(applyAction(again.stored.book, action)).toMatchObject({ error: { code: 'record-kept' } });
    }
  });

  test('keeps every kind of edit: put, replace, remove, move, settings', async () => {
    const book = sampleBook('residential-day');
    await createStoreFile(at('a.swardway'), book);
    const store = await open(at('a.swardway'));
    const [first, second] = book.properties;
    if (first === undefined || second === undefined) throw new Error('the sample has two properties');
    const after = await edit(store, store.stored.book, [
      numberedEdit(1),
      { kind: 'put', table: 'properties', record: { ...first, name: 'Renamed' } },
      { kind: 'remove', table: 'properties', id: second.id },
      { kind: 'move', table: 'properties', id: first.id, to: 5 },
      { kind: 'set', changes: { units: 'metric', prices: { ...book.prices, perMile: 0.9 } } },
    ]);
    await close(store);
    const again = await open(at('a.swardway'));
    expect(writeBook(again.stored.book)).toBe(writeBook(after));
    expect(again.stored).toMatchObject({ revision: 5, savedAt: '2026-03-01T12:00:00.000Z' });
  });

  test('gives back the book before when every inverse of its log is applied', async () => {
    const book = sampleBook('residential-day');
    await createStoreFile(at('a.swardway'), book);
    const store = await open(at('a.swardway'));
    await edit(store, store.stored.book, [numberedEdit(1), numberedEdit(2), { kind: 'set', changes: { name: 'New' } }]);
    await close(store);
    const { stored } = await open(at('a.swardway'));
    let now = stored.book;
    await close(opened[0] as BookStore);
    const log = await openConnection(at('a.swardway'), 'read');
    for (const row of await log.all('SELECT inverse FROM edit ORDER BY revision DESC')) {
      const undone = applyAction(now, JSON.parse(String(row.inverse)) as Action);
      if (!undone.ok) throw new Error(undone.error.detail);
      now = undone.value.book;
    }
    await log.close();
    expect(writeBook(now)).toBe(writeBook(book));
  });

  test('keeps a member that this version does not know, and records with the same id', async () => {
    const lot = sampleBook('residential-day').properties[0];
    if (lot === undefined) throw new Error('the sample has a property');
    const odd = {
      ...emptyBook('odd', 'Odd'),
      later: { a: 1 },
      properties: [lot, { ...lot, name: 'Twin' }, lot],
    } as Book;
    await createStoreFile(at('a.swardway'), odd);
    const store = await open(at('a.swardway'));
    expect(writeBook(store.stored.book)).toBe(writeBook(odd));
    expect(store.stored.book.properties.map(({ name }) => name)).toEqual([lot.name, 'Twin', lot.name]);
    const fewer = { ...store.stored.book, properties: store.stored.book.properties.slice(1) };
    const action: Action = { kind: 'set', changes: {} };
    const change = { before: store.stored.book, after: fewer, revision: 1, at: '', label: '', action, inverse: action };
    expect((await store.saveEdit(change)).ok).toBe(true);
    await close(store);
    expect((await open(at('a.swardway'))).stored.book.properties.map(({ name }) => name)).toEqual(['Twin', lot.name]);
  });

  test('is copied whole while it is open, the last edit included', async () => {
    await createStoreFile(at('a.swardway'), sampleBook('mixed-day'));
    const store = await open(at('a.swardway'));
    const after = await edit(store, store.stored.book, [numberedEdit(1)]);
    expect(await store.copyTo(at('b.swardway'))).toEqual({ ok: true, value: true });
    const copy = await open(at('b.swardway'));
    expect(writeBook(copy.stored.book)).toBe(writeBook(after));
    expect(copy.stored.revision).toBe(1);
  });

  test('is one file again once it is closed', async () => {
    await createStoreFile(at('a.swardway'), emptyBook('a', 'A'));
    const store = await open(at('a.swardway'));
    await edit(store, store.stored.book, [numberedEdit(1)]);
    await close(store);
    expect(await readdir(folder)).toEqual(['a.swardway']);
  });
});
