import { mkdir, mkdtemp, open, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  createFileTokens,
  dataFolder,
  decodeText,
  describePlace,
  fileFailure,
  fileNameFrom,
  readText,
  shortFolder,
  writeOwn,
  writeWhole,
} from '../../../../electron/services/files/index.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-files-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const failing = (code: string, syscall: string) => Object.assign(new Error(code), { code, syscall });

describe('writing a whole file', () => {
  test('replaces the old file, leaves nothing else; only for files of its own it makes folders', async () => {
    const file = path.join(folder, 'a/b/plan.json');
    expect(await writeWhole(file, 'lost')).toMatchObject({
      ok: false,
      error: { code: 'file-not-found', detail: expect.stringContaining(path.join(folder, 'a/b')) },
    });
    expect(await readdir(folder)).toEqual([]);
    expect((await writeOwn(file, 'old')).ok).toBe(true);
    expect((await writeWhole(file, 'new')).ok).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('new');
    expect(await readdir(path.dirname(file))).toEqual(['plan.json']);
  });

  /** Every step of it is made to fail in tests/electron/services/faults. */
  test.each([
    ['EACCES', 'file-not-writable'],
    ['EROFS', 'file-not-writable'],
    ['EPERM', 'file-not-writable'],
    ['EIO', 'file-not-writable'],
    ['ENOSPC', 'disk-full'],
    ['EDQUOT', 'disk-full'],
    ['EFBIG', 'disk-full'],
  ])('that fails with %s is told as %s', (code, expected) => {
    const failure = fileFailure(failing(code, 'open'), path.join(folder, 'plan.json'), 'write');
    expect(failure.error).toMatchObject({ code: expected, where: expect.stringContaining('plan.json in ') });
    expect(failure.error.detail).toMatch(/unchanged|nothing was changed/);
  });

  test('under a file instead of a folder fails', async () => {
    await writeFile(path.join(folder, 'a'), '');
    expect((await writeWhole(path.join(folder, 'a/b.json'), 'x')).ok).toBe(false);
  });
});

describe('reading text', () => {
  test('names an absent file, a folder, and what is no text', async () => {
    await mkdir(path.join(folder, 'sub'));
    await writeFile(path.join(folder, 'binary'), Uint8Array.of(0xc3, 0x28));
    expect(await readText(path.join(folder, 'none.csv'))).toMatchObject({
      error: { code: 'file-not-found', where: expect.stringContaining('none.csv in ') },
    });
    expect(await readText(path.join(folder, 'sub'))).toMatchObject({ error: { code: 'file-not-readable' } });
    expect(await readText(path.join(folder, 'binary'))).toMatchObject({ error: { code: 'format-invalid' } });
  });

  test('refuses a file that is too large before reading it', async () => {
    const handle = await open(path.join(folder, 'large'), 'w');
    await handle.truncate(65 * 1024 * 1024);
    await handle.close();
    expect(await readText(path.join(folder, 'large'))).toMatchObject({ error: { code: 'file-too-large' } });
  });

  test('drops a byte order mark', () => {
    expect(decodeText(Uint8Array.of(0xef, 0xbb, 0xbf, 0x61), 'a')).toEqual({ ok: true, value: 'a' });
  });
});

describe('places', () => {
  test('the own folder follows the habits of each system, or SWARDWAY_HOME', () => {
    expect(dataFolder({ SWARDWAY_HOME: folder }, 'linux')).toBe(folder);
    expect(dataFolder({ XDG_DATA_HOME: '/data' }, 'linux')).toBe(path.join('/data', 'swardway'));
    expect(dataFolder({ APPDATA: '/roaming' }, 'win32')).toBe(path.join('/roaming', 'Swardway'));
    expect(dataFolder({}, 'darwin')).toMatch(/Library\/Application Support\/Swardway$/);
  });

  test('are shown short', () => {
    expect(shortFolder('/home/ann/books', '/home/ann')).toBe(path.join('~', 'books'));
    expect(shortFolder('/home/ann', '/home/ann')).toBe('~');
    expect(shortFolder('/home/annabel', '/home/ann')).toBe('/home/annabel');
    expect(describePlace('/mnt/disk/a.swardway')).toBe('a.swardway in /mnt/disk');
  });

  test.each([
    ['North Side', 'north-side'],
    ['../../etc/passwd', 'etc-passwd'],
    ['Żółta łąka', 'zo-ta-aka'],
    ['  ', 'book'],
    ['a'.repeat(100), 'a'.repeat(60)],
  ])('a title %j becomes the file name %s', (title, name) => {
    const made = fileNameFrom(title);
    expect(made).toMatch(/^[\p{Letter}\p{Number}-]+$/u);
    if (title !== 'Żółta łąka') expect(made).toBe(name);
  });
});

test('tokens are opaque, stay the same for a file, and open nothing that was not given out', () => {
  const tokens = createFileTokens();
  const token = tokens.give('/home/ann/a.swardway');
  expect(token).toMatch(/^[A-Za-z0-9_-]{32}$/);
  expect(tokens.give('/home/ann/a.swardway')).toBe(token);
  expect(tokens.fileOf(token)).toBe('/home/ann/a.swardway');
  expect(tokens.fileOf('/home/ann/a.swardway')).toBeNull();
  expect(createFileTokens().give('/home/ann/a.swardway')).not.toBe(token);
});
