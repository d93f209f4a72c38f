import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { openConnection } from '../../../../electron/services/store/connection.ts';
import { type BookStore, createStoreFile, MIGRATIONS, openStore } from '../../../../electron/services/store/index.ts';
import { migrate } from '../../../../electron/services/store/migrate.ts';

let folder = '';
let file = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-picture-'));
  file = path.join(folder, 'a.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function open(name = file): Promise<BookStore> {
  const store = await openStore(name);
  if (!store.ok) throw new Error(store.error.detail);
  return store.value;
}
const PICTURE = { name: 'abc', mediaType: 'image/png', bytes: Uint8Array.from({ length: 3000 }, (_, at) => at % 251) };
const bytesIn = async (store: BookStore) => {
  const read = await store.readPicture('abc');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value === null ? null : [...read.value.bytes];
};

test('a picture is in the book file, also in a copy of it, byte for byte', async () => {
  const store = await open();
  expect(await bytesIn(store)).toBeNull();
  expect((await store.savePicture(PICTURE)).ok).toBe(true);
  expect((await store.savePicture(PICTURE)).ok).toBe(true);
  const copy = path.join(folder, 'copy.swardway');
  expect((await store.copyTo(copy)).ok).toBe(true);
  await store.close();
  for (const name of [file, copy]) {
    const again = await open(name);
    expect(await bytesIn(again)).toEqual([...PICTURE.bytes]);
    await again.close();
  }
});

test('a book file from before there were pictures gets a place for them', async () => {
  const connection = await openConnection(file, 'write');
  await connection.exec('DROP TABLE picture; PRAGMA user_version = 2');
  await connection.close();
  const store = await open();
  expect((await store.savePicture(PICTURE)).ok).toBe(true);
  await store.close();
});

test('a write-protected file from before there were pictures has none, takes none, and can be copied', async (context) => {
  if (process.getuid?.() === 0) context.skip('the super-user may write to every file');
  const connection = await openConnection(file, 'write');
  await connection.exec('DROP TABLE picture; PRAGMA user_version = 2; PRAGMA wal_checkpoint(TRUNCATE)');
  await connection.close();
  await chmod(file, 0o444);
  const store = await open();
  expect(await bytesIn(store)).toBeNull();
  expect(await store.savePicture(PICTURE)).toMatchObject({ ok: false, error: { code: 'book-read-only' } });
  expect((await store.copyTo(path.join(folder, 'copy.swardway'))).ok).toBe(true);
  await store.close();
});

/** A step that was ever shipped is never changed. */
test('the table of version 3 is as it was shipped', async () => {
  const connection = await openConnection(path.join(folder, 'tables.swardway'), 'create');
  await migrate(connection, MIGRATIONS.slice(0, 3));
  const columns = await connection.all("SELECT name, type FROM pragma_table_info('picture') ORDER BY cid");
  expect(columns.map(({ name, type }) => `${name} ${type}`)).toEqual(['name TEXT', 'media_type TEXT', 'bytes BLOB']);
  await connection.close();
});
