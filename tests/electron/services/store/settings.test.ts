import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { openBookFile } from '../../../../electron/services/store/open.ts';
import { createStoreFile } from '../../../../electron/services/store/store.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-settings-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** synchronous 2 is FULL: sqlite.org/pragma.html#pragma_synchronous. */
test('an open book commits to the disk, keeps others out and checks its references', async () => {
  const file = path.join(folder, 'a.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
  const opened = await openBookFile(file);
  if (!opened.ok) throw new Error(opened.error.detail);
  const { connection } = opened.value;
  const pragma = async (name: string) => Object.values((await connection.all(`PRAGMA ${name}`))[0] ?? {})[0];
  expect(await pragma('journal_mode')).toBe('wal');
  expect(await pragma('synchronous')).toBe(2);
  expect(await pragma('locking_mode')).toBe('exclusive');
  expect(await pragma('foreign_keys')).toBe(1);
  expect(await pragma('trusted_schema')).toBe(0);
  const tables = await connection.all(
    "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND type = 'table'",
  );
  const own = tables.filter(({ name }) => !String(name).startsWith('sqlite_'));
  expect(own).toHaveLength(7);
  expect(own.every(({ strict }) => strict === 1)).toBe(true);
  await expect(connection.run("INSERT INTO record VALUES ('no-such-list', 'a', '{}')")).rejects.toMatchObject({
    code: 'SQLITE_CONSTRAINT',
  });
  await connection.close();
});
