import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { emptyBook } from '../../../../core/book/index.ts';
import { openConnection } from '../../../../electron/services/store/connection.ts';
import { migrate } from '../../../../electron/services/store/migrate.ts';
import { MIGRATIONS } from '../../../../electron/services/store/migrations/index.ts';
import { type BookStore, createStoreFile, openStore } from '../../../../electron/services/store/store.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startChild } from '../../support/child.ts';

const ROUNDS = Number(process.env.SWARDWAY_KILL_ROUNDS ?? 12);
const AT = '2027-03-16T10:42:00.000Z';

let folder = '';
let program: Awaited<ReturnType<typeof bundleProgram>>;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-draft-'));
  program = await bundleProgram('tests/electron/support/draft-program.ts');
}, 60_000);
afterAll(async () => {
  await program.remove();
  await rm(folder, { recursive: true, force: true });
});

async function open(file: string): Promise<BookStore> {
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error.detail);
  return store.value;
}

test('an unfinished outline is kept beside the book and changes neither it nor its revision', async () => {
  const file = path.join(folder, 'a.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
  const store = await open(file);
  expect(store.stored.draft).toBeNull();
  expect(await store.saveDraft('{"corners":[[1,2]]}', AT)).toEqual({ ok: true, value: true });
  expect(await store.saveDraft('{"corners":[[1,2],[3,4]]}', AT)).toEqual({ ok: true, value: true });
  await store.close();
  const again = await open(file);
  expect(again.stored).toMatchObject({ draft: '{"corners":[[1,2],[3,4]]}', revision: 0, savedAt: null });
  expect((await again.saveDraft(null, AT)).ok).toBe(true);
  await again.close();
  const last = await open(file);
  expect(last.stored.draft).toBeNull();
  await last.close();
});

test('a book file from before there were unfinished outlines gets a place for one', async () => {
  const file = path.join(folder, 'old.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
  const connection = await openConnection(file, 'write');
  await connection.exec('DROP TABLE draft; DROP TABLE picture; PRAGMA user_version = 1');
  await connection.close();
  const store = await open(file);
  expect(store.stored.draft).toBeNull();
  expect((await store.saveDraft('{}', AT)).ok).toBe(true);
  await store.close();
});

/** A step that was ever shipped is never changed. */
test('the table of version 2 is as it was shipped, and holds one row at most', async () => {
  const connection = await openConnection(path.join(folder, 'tables.swardway'), 'create');
  await migrate(connection, MIGRATIONS.slice(0, 2));
  const columns = await connection.all("SELECT name, type FROM pragma_table_info('draft') ORDER BY cid");
  expect(columns.map(({ name, type }) => `${name} ${type}`)).toEqual(['slot INTEGER', 'saved_at TEXT', 'json TEXT']);
  const second = connection.run("INSERT INTO draft (slot, saved_at, json) VALUES (2, '', '')");
  await expect(second).rejects.toMatchObject({ code: 'SQLITE_CONSTRAINT' });
  await connection.close();
});

test(`no corner that was said to be kept is lost in ${ROUNDS} kills while drawing`, async () => {
  const file = path.join(folder, 'killed.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
  const random = createRandom(20_270_316);
  let most = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const child = startChild(process.execPath, [program.file, file]);
    await child.until('kept ');
    await wait(random.unit() * 60);
    child.process.kill('SIGKILL');
    expect((await child.ended).signal).toBe('SIGKILL');
    const told = Math.max(...[...child.output().matchAll(/^kept (\d+)\n/gm)].map((match) => Number(match[1])));
    most = Math.max(most, told);
    const store = await open(file);
    const corners = (JSON.parse(store.stored.draft ?? 'null') as { corners: number[][] } | null)?.corners ?? [];
    expect(corners.length).toBeGreaterThanOrEqual(told);
    expect(corners).toEqual(corners.map((_, index) => [index, index]));
    await store.close();
  }
  expect(most).toBeGreaterThan(3);
}, 120_000);
