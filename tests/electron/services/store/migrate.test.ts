import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { openConnection } from '../../../../electron/services/store/connection.ts';
import { readHeader } from '../../../../electron/services/store/header.ts';
import { APPLICATION_ID, migrate, userVersion } from '../../../../electron/services/store/migrate.ts';
import { MIGRATIONS } from '../../../../electron/services/store/migrations/index.ts';
import { openBookFile } from '../../../../electron/services/store/open.ts';
import { createStoreFile } from '../../../../electron/services/store/store.ts';

let folder = '';
let file = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-migrate-'));
  file = path.join(folder, 'a.swardway');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const SECOND = {
  name: '004-a-test',
  statements: ['ALTER TABLE plan ADD COLUMN colour TEXT', "UPDATE member SET json = '1' WHERE name = 'note'"],
};
const BROKEN = {
  name: '004-broken',
  statements: ['CREATE TABLE half (a TEXT) STRICT', 'CREATE TABLE half (a TEXT) STRICT'],
};

test('the steps are numbered in order from 001', () => {
  MIGRATIONS.forEach(({ name }, index) => {
    expect(name).toMatch(new RegExp(`^${String(index + 1).padStart(3, '0')}-[a-z-]+$`));
  });
});

/** A step that was ever shipped is never changed; this table grows only. */
test('the tables of version 1 are as they were shipped', async () => {
  const connection = await openConnection(file, 'create');
  await migrate(connection, MIGRATIONS.slice(0, 1));
  const columns = await connection.all(
    `SELECT t.name || '.' || c.name || ' ' || c.type || CASE c."notnull" WHEN 1 THEN ' not null' ELSE '' END AS line
     FROM pragma_table_list t JOIN pragma_table_info(t.name) c
     WHERE t.schema = 'main' AND t.name NOT LIKE 'sqlite_%' ORDER BY t.name, c.cid`,
  );
  expect(columns.map(({ line }) => line)).toEqual([
    'edit.revision INTEGER',
    'edit.at TEXT not null',
    'edit.label TEXT not null',
    'edit.action TEXT not null',
    'edit.inverse TEXT not null',
    'listing.kind TEXT not null',
    'listing.slots TEXT not null',
    'member.name TEXT not null',
    'member.json TEXT not null',
    'plan.round_id TEXT not null',
    'plan.saved_at TEXT not null',
    'plan.problem_hash TEXT not null',
    'plan.json TEXT not null',
    'record.kind TEXT not null',
    'record.slot TEXT not null',
    'record.json TEXT not null',
  ]);
  await connection.close();
});

test('a new file carries its mark and version in its first bytes', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  expect(await readHeader(file)).toEqual({
    kind: 'sqlite',
    applicationId: APPLICATION_ID,
    userVersion: MIGRATIONS.length,
  });
});

test('an older file is backed up, brought up step by step, and says so in its first bytes', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  const opened = await openBookFile(file, [...MIGRATIONS, SECOND]);
  if (!opened.ok) throw new Error(opened.error.detail);
  const { connection } = opened.value;
  expect(await userVersion(connection)).toBe(MIGRATIONS.length + 1);
  expect(await connection.all("SELECT json FROM member WHERE name = 'note'")).toEqual([{ json: '1' }]);
  expect(await readHeader(file)).toMatchObject({ userVersion: MIGRATIONS.length + 1 });
  await connection.close();

  const backup = `${file}.version-${MIGRATIONS.length}.backup`;
  expect((await readdir(folder)).sort()).toEqual(['a.swardway', path.basename(backup)]);
  const old = await openBookFile(backup);
  if (!old.ok) throw new Error(old.error.detail);
  expect(await old.value.connection.all("SELECT json FROM member WHERE name = 'note'")).toEqual([{ json: '""' }]);
  await old.value.connection.close();
});

test('a step that fails leaves the file at the version before it', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  await expect(openBookFile(file, [...MIGRATIONS, BROKEN])).rejects.toMatchObject({ code: 'SQLITE_ERROR' });
  const opened = await openBookFile(file);
  if (!opened.ok) throw new Error(opened.error.detail);
  expect(await userVersion(opened.value.connection)).toBe(MIGRATIONS.length);
  expect(await opened.value.connection.all("SELECT name FROM sqlite_schema WHERE name = 'half'")).toEqual([]);
  await opened.value.connection.close();
});
