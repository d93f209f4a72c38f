import { createHash } from 'node:crypto';
import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { readHeader } from '../../../../electron/services/store/header.ts';
import { APPLICATION_ID, userVersion } from '../../../../electron/services/store/migrate.ts';
import { MIGRATIONS } from '../../../../electron/services/store/migrations/index.ts';
import { openBookFile } from '../../../../electron/services/store/open.ts';
import { createStoreFile, openStore } from '../../../../electron/services/store/store.ts';

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

/** Steps that were shipped, by the SHA-256 of what they say. This table grows only: who changes a line of it breaks books that are out there. */
const SHIPPED: Readonly<Record<string, string>> = {
  '001-first-tables': 'd26893dcbd3a96d033695b55e9dcf9c927bdc42243c7406944a525c2db6eeed9',
  '002-draft': '81631e7c522b1a4cbe5b4c72c2dce1ef73ee4b8ba92c07d20f55cc2a92381c22',
  '003-picture': 'efbf5e17df73dbb14dd307d96325caf09b4a3199c22dc0ffdf9832d5246c545b',
};

test('no step that was shipped was changed since', () => {
  const hashOf = (statements: readonly string[]): string =>
    createHash('sha256').update(statements.join(';\n')).digest('hex');
  expect(Object.fromEntries(MIGRATIONS.map(({ name, statements }) => [name, hashOf(statements)]))).toEqual(SHIPPED);
});

test('a new book and one brought up from the first version have the same tables, those of the stored text', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  const old = path.join(folder, 'old.swardway');
  await copyFile('tests/fixtures/books/version-1.swardway', old);
  for (const name of [file, old]) {
    const opened = await openBookFile(name);
    if (!opened.ok) throw new Error(opened.error.detail);
    const tables = await opened.value.connection.all(
      "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY name",
    );
    await opened.value.connection.close();
    const text = tables.map(({ sql }) => String(sql)).join(';\n');
    expect(`${text};\n`, path.basename(name)).toBe(await readFile('tests/fixtures/books/tables.sql', 'utf8'));
  }
});

test.each(MIGRATIONS.map((_, index) => index + 1))(
  'a book of version %i, stored when that was the newest, is read with all that it held',
  async (version) => {
    const stored = `tests/fixtures/books/version-${version}.swardway`;
    expect(await readHeader(stored)).toEqual({ kind: 'sqlite', applicationId: APPLICATION_ID, userVersion: version });
    await copyFile(stored, file);
    const open = await openStore(file);
    if (!open.ok) throw new Error(open.error.detail);
    const { book, revision, savedAt, plans, draft } = open.value.stored;
    const picture = await open.value.readPicture('a1');
    expect((await open.value.close()).ok).toBe(true);
    // The facts that tests/support/write-old-book.ts put in.
    expect([book.name, book.note, book.properties.length]).toEqual(['Stored book', 'three', 2]);
    expect(book.properties.every(({ zones }) => zones.length > 0)).toBe(true);
    expect([revision, savedAt]).toEqual([3, '2026-03-01T12:00:00.000Z']);
    expect(plans.map(({ roundId }) => roundId)).toEqual(['r1']);
    expect(draft).toBe(version >= 2 ? '{"corners":[]}' : null);
    expect(picture.ok && picture.value?.bytes.length).toBe(version >= 3 ? 3 : undefined);
    expect(await readHeader(file)).toMatchObject({ userVersion: MIGRATIONS.length });
    const names = (await readdir(folder)).filter((name) => name !== 'a.swardway');
    expect(names).toEqual(version < MIGRATIONS.length ? [`a.swardway.version-${version}.backup`] : []);
  },
);

test('an earlier backup of the same version is not taken for one of this book, and not written over', async () => {
  await copyFile('tests/fixtures/books/version-1.swardway', file);
  const earlier = `${file}.version-1.backup`;
  await writeFile(earlier, 'of another day');
  const open = await openStore(file);
  expect(open.ok && (await open.value.close()).ok).toBe(true);
  expect(await readFile(earlier, 'utf8')).toBe('of another day');
  expect(await readHeader(`${file}.version-1-2.backup`)).toMatchObject({ kind: 'sqlite', userVersion: 1 });
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
