import { mkdir, mkdtemp, readdir, realpath, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { MIGRATIONS } from '../../../../electron/services/store/migrations/index.ts';
import { openBookFile } from '../../../../electron/services/store/open.ts';
import { type PlaceSource, placeOfBook } from '../../../../electron/services/store/place.ts';
import { createStoreFile, openStore } from '../../../../electron/services/store/store.ts';

let folder = '';
beforeEach(async () => {
  folder = await realpath(await mkdtemp(path.join(tmpdir(), 'swardway-place-')));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const OWN: PlaceSource = {
  platform: 'linux',
  systemType: async () => 0xef53,
  namesIn: async () => [],
  mounts: async () => '',
};
const found = (source: Partial<PlaceSource>) => placeOfBook(path.join(folder, 'a.swardway'), { ...OWN, ...source });

describe('where a book lies', () => {
  test('a disk of this machine is its own', async () => {
    expect(await found({})).toEqual({ kind: 'own' });
  });

  // Type numbers: statfs(2), Linux man-pages 6.7; 0xEF53 above is ext2 to ext4.
  test.each([
    [0x6969, 'NFS'],
    [0xff534d42, 'SMB'],
    [0xff534d42 - 2 ** 32, 'SMB'],
    [0x01021997, '9P'],
  ])('a network drive of type %i is told', async (type, words) => {
    expect(await found({ systemType: async () => type })).toEqual({
      kind: 'shared',
      words: `on a network drive (${words})`,
    });
  });

  test('a file system that a program serves is looked up in the table of mounts, the longest one above the folder', async () => {
    const systemType = async () => 0x65735546;
    const mounts = async () =>
      `/dev/sda1 / ext4 rw 0 0\nfar:/books ${folder} fuse.sshfs rw 0 0\nx ${folder}/deeper fuse.x rw 0 0\n`;
    expect(await found({ systemType, mounts })).toEqual({ kind: 'shared', words: 'on a network drive (sshfs)' });
    const local = async () => `/dev/sda1 / ext4 rw 0 0\nstick ${folder} fuse.ntfs rw 0 0\n`;
    expect(await found({ systemType, mounts: local })).toEqual({ kind: 'own' });
  });

  test('on Windows a share is known by its name', async () => {
    const windows = (file: string) => placeOfBook(file, { ...OWN, platform: 'win32' });
    // Here the folder cannot be looked up, so the name is taken as it is written from the root.
    expect(await windows('/books/a.swardway')).toEqual({ kind: 'own' });
    expect(await windows('//server/books/a.swardway')).toMatchObject({
      kind: process.platform === 'win32' ? 'shared' : 'own',
    });
  });

  test('a folder that is kept the same elsewhere is known by what lies at its top, or by its name', async () => {
    const marked = (top: string) => async (each: string) => (each === top ? ['.stfolder', 'x'] : []);
    expect(await found({ namesIn: marked(path.dirname(folder)) })).toMatchObject({ kind: 'shared' });
    const named = path.join(folder, 'OneDrive - Lawns', 'books');
    await mkdir(named, { recursive: true });
    expect(await placeOfBook(path.join(named, 'a.swardway'), OWN)).toEqual({
      kind: 'shared',
      words: 'in a folder that is kept the same on several machines (OneDrive - Lawns)',
    });
  });
});

describe('a book in a shared folder', () => {
  const SHARED = { kind: 'shared', words: 'on a network drive (NFS)' } as const;

  test('is stored without a log beside it, says so, and is taken for one machine alone', async () => {
    const file = path.join(folder, 'a.swardway');
    await createStoreFile(file, emptyBook('a', 'A'));
    const open = await openBookFile(file, MIGRATIONS, SHARED);
    if (!open.ok) throw new Error(open.error.detail);
    expect(open.value.remark).toBe(
      'The book lies on a network drive (NFS): it is stored without a log beside it, and one machine at a time can have it open.',
    );
    const { connection } = open.value;
    await connection.transaction(() => connection.run("UPDATE member SET json = '\"x\"' WHERE name = 'note'"));
    expect((await readdir(folder)).filter((name) => name.endsWith('-wal'))).toEqual([]);
    expect(await connection.all('PRAGMA journal_mode')).toEqual([{ journal_mode: 'delete' }]);
    // 3 is EXTRA: "PRAGMA synchronous", sqlite.org/pragma.html.
    expect(await connection.all('PRAGMA synchronous')).toEqual([{ synchronous: 3 }]);
    const second = await openStore(file);
    expect(second.ok && second.value.readOnlyBecause).toMatch(/Somebody else/);
    if (second.ok) await second.value.close();
    await connection.close();
    // Back on a disk of its own it has its log again.
    const again = await openBookFile(file, MIGRATIONS, { kind: 'own' });
    if (!again.ok) throw new Error(again.error.detail);
    expect(await again.value.connection.all('PRAGMA journal_mode')).toEqual([{ journal_mode: 'wal' }]);
    await again.value.connection.close();
  });
});
