import { copyFile, mkdtemp, readdir, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { OpenBook } from '../../../../core/contract/index.ts';
import { openStore } from '../../../../electron/services/store/index.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

let host: TestHost;
let screen: TestClient;
let clock = 0;
const MINUTE = 60_000;

beforeEach(async () => {
  clock = new Date(2026, 2, 10, 9).getTime();
  host = await startTestHost({ now: () => new Date(clock) });
  screen = host.screen('one');
});
afterEach(() => host.close());

async function rename(open: OpenBook, revision: number, name: string): Promise<void> {
  await screen.must('book.apply', {
    session: open.session,
    action: { kind: 'set', changes: { name } },
    baseRevision: revision,
  });
}

async function fresh(name = 'Season'): Promise<OpenBook> {
  const open = await screen.must('book.create', { name });
  if ('kind' in open) throw new Error('cancelled');
  return open;
}

const list = (open: OpenBook) => screen.must('backup.list', { token: open.token });
const bookFile = async (): Promise<string> => {
  const folder = path.join(host.folder, 'books');
  const [name] = (await readdir(folder)).filter((each) => each.endsWith('.swardway'));
  return path.join(folder, name ?? '');
};

describe('backups of a book', () => {
  test('none is taken of a book that was only looked at', async () => {
    const open = await fresh();
    await screen.must('book.close', { session: open.session });
    expect(await list(open)).toEqual([]);
  });

  test('one is taken a quarter of an hour after the last, and one on closing', async () => {
    const open = await fresh();
    await rename(open, 0, 'Early');
    clock += 14 * MINUTE;
    await rename(open, 1, 'Still early');
    expect(await list(open)).toEqual([]);
    clock += MINUTE;
    await rename(open, 2, 'Due');
    await expect.poll(async () => (await list(open)).map(({ revision }) => revision)).toEqual([3]);
    clock += MINUTE;
    await rename(open, 3, 'At the end');
    await screen.must('book.close', { session: open.session });
    expect((await list(open)).map(({ revision }) => revision)).toEqual([4, 3]);
  });

  test('a clock that was set back holds no backup up, and one that went ahead harms none', async () => {
    const open = await fresh();
    await rename(open, 0, 'Early');
    clock -= 24 * 60 * MINUTE;
    await rename(open, 1, 'A day before');
    await expect.poll(async () => (await list(open)).map(({ revision }) => revision)).toEqual([2]);
    clock += 400 * 24 * 60 * MINUTE;
    await rename(open, 2, 'A year ahead');
    await expect.poll(async () => (await list(open)).map(({ revision }) => revision)).toEqual([3, 2]);
    clock -= 399 * 24 * 60 * MINUTE;
    await rename(open, 3, 'Back again');
    await screen.must('book.close', { session: open.session });
    expect((await list(open)).map(({ revision }) => revision).toSorted()).toEqual([2, 3, 4]);
  });

  test('a book that comes to the same number of edits in another way is copied all the same', async () => {
    const first = await fresh();
    await rename(first, 0, 'One');
    await screen.must('book.close', { session: first.session });
    const second = await screen.must('book.open', { token: first.token });
    clock += MINUTE;
    await rename(second, 1, 'Two');
    const [backup] = await list(second);
    const back = { token: second.token, backupId: backup?.backupId ?? '', session: second.session };
    const restored = await screen.must('backup.restore', back);
    clock += MINUTE;
    await rename(restored, 1, 'Two, otherwise');
    await screen.must('book.close', { session: restored.session });
    expect((await list(restored)).map(({ revision }) => revision)).toEqual([2, 2, 1]);
  });

  test('restoring brings the book back and keeps the one it replaces', async () => {
    const first = await fresh();
    await rename(first, 0, 'Good');
    await screen.must('book.close', { session: first.session });
    const second = await screen.must('book.open', { token: first.token });
    clock += MINUTE;
    await rename(second, 1, 'Mistake');
    const [backup] = await list(second);
    const restored = await screen.must('backup.restore', {
      token: second.token,
      backupId: backup?.backupId ?? '',
      session: second.session,
    });
    expect(restored.book.name).toBe('Good');
    expect(restored.revision).toBe(1);
    // The edit after it is not lost: it is the newest backup.
    expect((await list(restored)).map(({ revision }) => revision)).toEqual([2, 1]);
    // The old session is gone with the book as it was.
    expect(await screen.call('book.read', { session: second.session })).toMatchObject({ ok: false });
    expect((await readdir(path.dirname(await bookFile()))).filter((name) => !name.endsWith('.swardway'))).toEqual([
      'season.swardway-wal',
    ]);
  });

  test('a damaged book is set aside with its log, and the backup opens in its place', async () => {
    const open = await fresh();
    await rename(open, 0, 'Good');
    await screen.must('book.close', { session: open.session });
    const file = await bookFile();
    const { size } = await stat(file);
    await truncate(file, Math.floor(size / 2));
    const broken = await readFile(file);
    expect(await screen.call('book.open', { token: open.token })).toMatchObject({
      ok: false,
      error: { code: 'book-damaged' },
    });
    const [backup] = await list(open);
    await writeFile(`${file}-wal`, 'left over');
    const request = { token: open.token, backupId: backup?.backupId ?? '', session: null };
    const restored = await screen.must('backup.restore', request);
    expect(restored.book.name).toBe('Good');
    const names = await readdir(path.dirname(file));
    const aside = names.find((name) => /\.set-aside-\d{8}T\d{9}Z$/.test(name));
    expect(await readFile(path.join(path.dirname(file), aside ?? ''))).toEqual(broken);
    expect(names).toContain(`${aside}-wal`);
  });

  test('a backup that is itself damaged is refused, and the book stays as it is', async () => {
    const open = await fresh();
    await rename(open, 0, 'Good');
    await screen.must('book.close', { session: open.session });
    const again = await screen.must('book.open', { token: open.token });
    const [backup] = await list(again);
    const folder = path.join(host.folder, 'backups');
    const [inside = ''] = await readdir(folder);
    const copy = path.join(folder, inside, `${backup?.backupId}.swardway`);
    await truncate(copy, Math.floor((await stat(copy)).size / 2));
    const request = { token: again.token, backupId: backup?.backupId ?? '', session: again.session };
    expect(await screen.call('backup.restore', request)).toMatchObject({ ok: false, error: { code: 'book-damaged' } });
    expect((await screen.must('book.open', { token: again.token })).book.name).toBe('Good');
  });

  test('a book that another window has open is not replaced', async () => {
    const open = await fresh();
    await rename(open, 0, 'Good');
    await screen.must('book.close', { session: open.session });
    const mine = await screen.must('book.open', { token: open.token });
    const other = host.screen('two');
    await other.must('book.open', { token: open.token });
    const [backup] = await list(mine);
    const request = { token: mine.token, backupId: backup?.backupId ?? '', session: mine.session };
    expect(await screen.call('backup.restore', request)).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    expect(await screen.call('book.read', { session: mine.session })).toMatchObject({ ok: true });
  });

  test('a backup that is gone, or was never there, is told', async () => {
    const open = await fresh();
    await screen.must('book.close', { session: open.session });
    const request = { token: open.token, backupId: 'nothing-like-it', session: null };
    expect(await screen.call('backup.restore', request)).toMatchObject({
      ok: false,
      error: { code: 'backup-missing' },
    });
  });

  test('ten days of work leave ten backups, each of them whole', async () => {
    let open = await fresh();
    for (let edit = 0; edit < 13; edit += 1) {
      await rename(open, edit, `Edit ${edit + 1}`);
      await screen.must('book.close', { session: open.session });
      clock += 24 * 60 * MINUTE;
      open = await screen.must('book.open', { token: open.token });
    }
    expect((await list(open)).map(({ revision }) => revision)).toEqual([13, 12, 11, 10, 9, 8, 7, 6, 5, 4]);
    const folder = path.join(host.folder, 'backups');
    const [inside = ''] = await readdir(folder);
    for (const name of await readdir(path.join(folder, inside))) {
      const place = await mkdtemp(path.join(tmpdir(), 'swardway-backup-'));
      await copyFile(path.join(folder, inside, name), path.join(place, 'a.swardway'));
      const store = await openStore(path.join(place, 'a.swardway'));
      if (!store.ok) throw new Error(store.error.detail);
      expect(store.value.stored.book.name).toBe(`Edit ${store.value.stored.revision}`);
      await store.value.close();
      await rm(place, { recursive: true });
    }
  });
});
