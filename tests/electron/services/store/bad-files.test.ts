import { execFileSync } from 'node:child_process';
import { chmod, chown, mkdir, mkdtemp, open as openFile, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { applyAction } from '../../../../core/edit/index.ts';
import { createStoreFile, MIGRATIONS, openStore } from '../../../../electron/services/store/index.ts';
import { openBookFile } from '../../../../electron/services/store/open.ts';
import { sampleBook } from '../../../support/samples.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startChild } from '../../support/child.ts';
import { numberedEdit } from '../../support/numbered-edit.ts';

let program: Awaited<ReturnType<typeof bundleProgram>>;
let folder = '';
let file = '';

beforeAll(async () => {
  program = await bundleProgram('tests/electron/support/store-program.ts');
}, 60_000);
afterAll(() => program.remove());
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-bad-'));
  file = path.join(folder, 'north.swardway');
});
afterEach(async () => {
  await chmod(folder, 0o755);
  await rm(folder, { recursive: true, force: true });
});

/** Every failure names the file and its folder, and says what to do. */
function expectFailure(outcome: unknown, code: string): void {
  expect(outcome).toMatchObject({ ok: false, error: { code, where: expect.stringContaining('north.swardway in ') } });
  const { detail, hint } = (outcome as { error: { detail: string; hint: string } }).error;
  expect(detail.length).toBeGreaterThan(20);
  expect(hint.length).toBeGreaterThan(20);
}

async function patch(position: number, bytes: readonly number[]): Promise<void> {
  const handle = await openFile(file, 'r+');
  await handle.write(Buffer.from(bytes), 0, bytes.length, position);
  await handle.close();
}

/** An edit stored through the store, as an outcome. */
async function tryEdit(store: Awaited<ReturnType<typeof openStore>>) {
  if (!store.ok) throw new Error(store.error.detail);
  const { book, revision } = store.value.stored;
  const action = numberedEdit(revision + 1);
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  const { book: after, inverse, label } = applied.value;
  return store.value.saveEdit({ before: book, after, revision: revision + 1, at: '', label, action, inverse });
}

describe('a file that is no book', () => {
  test.each([
    ['text', 'not a book at all'],
    ['nothing', ''],
    ['half a header', 'SQLite format 3\0'],
  ])('%s: refused, bytes untouched', async (_name, content) => {
    await writeFile(file, content);
    expectFailure(await openStore(file), 'not-a-book');
    expect(await readFile(file, 'utf8')).toBe(content);
  });

  test('a database of another program is refused, bytes untouched', async () => {
    await createStoreFile(file, emptyBook('a', 'A'));
    await patch(68, [1, 2, 3, 4]);
    const before = await readFile(file);
    expectFailure(await openStore(file), 'not-a-book');
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  test('a folder is refused', async () => {
    await mkdir(file);
    expectFailure(await openStore(file), 'file-not-readable');
  });

  test('an absent file is not made', async () => {
    expectFailure(await openStore(file), 'file-not-found');
    await expect(readFile(file)).rejects.toMatchObject({ code: 'ENOENT' });
  });
});

test('a book of a newer version is refused, bytes untouched', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  await patch(60, [0, 0, 0, MIGRATIONS.length + 1]);
  const before = await readFile(file);
  const outcome = await openStore(file);
  expectFailure(outcome, 'newer-version');
  expect(outcome).toMatchObject({ error: { detail: expect.stringContaining(`${MIGRATIONS.length + 1}`) } });
  expect((await readFile(file)).equals(before)).toBe(true);
});

describe('a damaged book', () => {
  test('with overwritten pages is refused and keeps its bytes', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    await patch(4096, new Array(12_000).fill(0xa5));
    const before = await readFile(file);
    expectFailure(await openStore(file), 'book-damaged');
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  test('with a record missing from a list is refused', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    const opened = await openBookFile(file);
    if (!opened.ok) throw new Error(opened.error.detail);
    await opened.value.connection.run(
      "DELETE FROM record WHERE rowid = (SELECT max(rowid) FROM record WHERE kind = 'properties')",
    );
    await opened.value.connection.close();
    expectFailure(await openStore(file), 'book-damaged');
  });

  test('with a record of the wrong shape names the field', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    const opened = await openBookFile(file);
    if (!opened.ok) throw new Error(opened.error.detail);
    await opened.value.connection.run("UPDATE member SET json = '\"furlongs\"' WHERE name = 'units'");
    await opened.value.connection.close();
    expect(await openStore(file)).toMatchObject({
      ok: false,
      error: { code: 'wrong-schema', where: expect.stringContaining('units') },
    });
  });
});

test('a book that another process has open is shown and takes no edits, and opens once that has ended', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  const holder = startChild(process.execPath, [program.file, 'hold', file]);
  await holder.until('"ok":true');
  const second = await openStore(file);
  if (!second.ok) throw new Error(second.error.detail);
  expect(second.value.readOnlyBecause).toMatch(/^Somebody else has this book open\./);
  expect(second.value.stored.book.name).toBe('A');
  expectFailure(await tryEdit(second), 'book-read-only');
  expect((await second.value.close()).ok).toBe(true);
  holder.process.kill('SIGKILL');
  await holder.ended;
  const store = await openStore(file);
  expect(store.ok && (await store.value.close()).ok).toBe(true);
});

test('what was stored last is seen by whoever opens the book second, also while it is still in the log', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  const first = await openStore(file);
  if (!first.ok) throw new Error(first.error.detail);
  expect((await tryEdit(first)).ok).toBe(true);
  const second = await openStore(file);
  if (!second.ok) throw new Error(second.error.detail);
  expect(second.value.stored.revision).toBe(1);
  const copy = path.join(folder, 'seen.swardway');
  expect((await second.value.copyTo(copy)).ok).toBe(true);
  await second.value.close();
  await first.value.close();
  const saved = await openStore(copy);
  expect(saved.ok && saved.value.stored.revision).toBe(1);
  if (saved.ok) await saved.value.close();
});

test('a book that was not closed gives way to another one with its log, and one that is open does not', async () => {
  await createStoreFile(file, emptyBook('a', 'A'));
  const writer = startChild(process.execPath, [program.file, 'write', file]);
  await writer.until('stored 3\n');
  expect(await createStoreFile(file, emptyBook('b', 'B'), true)).toMatchObject({ error: { code: 'book-locked' } });
  writer.process.kill('SIGKILL');
  await writer.ended;
  expect((await readFile(`${file}-wal`)).length).toBeGreaterThan(0);
  expect((await createStoreFile(file, emptyBook('b', 'B'), true)).ok).toBe(true);
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error.detail);
  expect([store.value.stored.book.name, store.value.stored.revision]).toEqual(['B', 0]);
  expect(await store.value.copyTo(file)).toMatchObject({ error: { code: 'book-locked' } });
  await store.value.close();
});

describe('a book file that goes away while it is open', () => {
  test('refuses the edit, takes it once the file is back, and can be copied meanwhile', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    const store = await openStore(file);
    await rename(file, `${file}.moved`);
    expectFailure(await tryEdit(store), 'book-vanished');
    if (!store.ok) throw new Error('unreachable');
    const copy = path.join(folder, 'copy.swardway');
    expect((await store.value.copyTo(copy)).ok).toBe(true);
    await rename(`${file}.moved`, file);
    expect((await tryEdit(store)).ok).toBe(true);
    await store.value.close();
    const again = await openStore(copy);
    if (!again.ok) throw new Error(again.error.detail);
    expect(again.value.stored.book.properties).toHaveLength(sampleBook('residential-day').properties.length);
    await again.value.close();
  });

  test('also when another file took its name', async () => {
    await createStoreFile(file, emptyBook('a', 'A'));
    const store = await openStore(file);
    await createStoreFile(path.join(folder, 'other'), emptyBook('b', 'B'));
    await rename(path.join(folder, 'other'), file);
    expectFailure(await tryEdit(store), 'book-vanished');
    if (store.ok) await store.value.close();
  });
});

/** The superuser may write anywhere, so the child runs as somebody else (uid and gid 65534, "nobody"). */
const asNobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

/** Why a write-protected file cannot be tried here, or null. */
function whyNotProtected(): string | null {
  if (process.platform === 'win32') return 'Windows has no permission bits';
  try {
    const probe = `require('node:fs').accessSync(${JSON.stringify(program.file)})`;
    execFileSync(process.execPath, ['-e', probe], { ...asNobody, cwd: tmpdir(), stdio: 'ignore' });
    return null;
  } catch {
    return 'run by the superuser from a folder that no other user may read';
  }
}

describe('a write-protected book', () => {
  beforeEach((context) => {
    const why = whyNotProtected();
    if (why === null) return;
    console.log(`${context.task.name}: skipped, ${why}`);
    context.skip(why);
  });

  const outcomes = (output: string): readonly unknown[] =>
    output
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
  const openAsOther = async () => {
    const child = startChild(process.execPath, [program.file, 'open', file], {
      ...asNobody,
      env: { ...process.env, TRY_EDIT: '1' },
    });
    await child.ended;
    return outcomes(child.output());
  };
  const handOver = async (name: string, mode: number): Promise<void> => {
    if (asNobody.uid !== undefined) await chown(name, asNobody.uid, asNobody.gid);
    await chmod(name, mode);
  };

  test('opens for reading and refuses an edit, bytes untouched', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    const before = await readFile(file);
    await handOver(folder, 0o755);
    await handOver(file, 0o444);
    const [opened, edited] = await openAsOther();
    expect(opened).toEqual({ ok: true, readOnlyBecause: 'The book file is write-protected.' });
    expectFailure(edited, 'book-read-only');
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  test('also when only its folder is protected, as on a disc', async () => {
    await createStoreFile(file, sampleBook('residential-day'));
    await handOver(file, 0o644);
    await handOver(folder, 0o555);
    const [opened, edited] = await openAsOther();
    expect(opened).toEqual({ ok: true, readOnlyBecause: 'The folder of the book is write-protected.' });
    expectFailure(edited, 'book-read-only');
  });

  test('is refused while its last edits are still in its log', async () => {
    await createStoreFile(file, emptyBook('a', 'A'));
    const writer = startChild(process.execPath, [program.file, 'write', file]);
    await writer.until('stored 3\n');
    writer.process.kill('SIGKILL');
    await writer.ended;
    await handOver(file, 0o444);
    await handOver(`${file}-wal`, 0o444);
    await handOver(folder, 0o555);
    const [opened] = await openAsOther();
    expectFailure(opened, 'book-read-only');
  });
});

describe('a full disk', () => {
  const SMALL_DISK = 'mount -t tmpfs -o size=200k none "$0" && exec "$1" "$2" fill "$0/north.swardway"';
  const canMount = (): boolean => {
    try {
      execFileSync('unshare', ['-rm', 'sh', '-c', 'mount -t tmpfs -o size=64k none "$0"', tmpdir()], {
        stdio: 'ignore',
      });
      return true;
    } catch {
      return false;
    }
  };

  test('refuses the edit and keeps all that was stored (a real disk of 200 kB)', async (context) => {
    if (!canMount()) {
      console.log(
        'a real full disk: skipped, this user may not mount a small disk; the next test limits the file instead',
      );
      context.skip('this user may not mount a small disk');
    }
    const child = startChild('unshare', ['-rm', 'sh', '-c', SMALL_DISK, folder, process.execPath, program.file]);
    expect((await child.ended).code, child.output()).toBe(0);
    const [huge, refused, again, ...others] = child
      .output()
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    // A refused edit leaves no trace: smaller ones still find room after it.
    expectFailure(huge, 'disk-full');
    expectFailure({ ok: false, error: refused.refused }, 'disk-full');
    expect(refused.stored).toBeGreaterThan(3);
    expect(again).toEqual({ revision: refused.stored, properties: refused.stored });
    // Nor do a copy, a new book, a restored one and a file for other programs, none of which finds room.
    const { left } = others.pop() as { readonly left: readonly string[] };
    expect(others.map((each) => each.error?.code)).toEqual(['disk-full', 'disk-full', 'disk-full', 'disk-full']);
    // There may be no room to take the log into the book: both stay, and are one book.
    expect(left.filter((name) => name !== 'north.swardway-wal')).toEqual(['north.swardway']);
  });

  test('refuses the edit and keeps all that was stored (a limit on the pages of the file)', async () => {
    await createStoreFile(file, emptyBook('a', 'A'));
    const opened = await openBookFile(file);
    if (!opened.ok) throw new Error(opened.error.detail);
    const { connection } = opened.value;
    await connection.exec('PRAGMA max_page_count = 1');
    await expect(
      connection.transaction(async () => {
        await connection.run('INSERT OR REPLACE INTO member (name, json) VALUES (?, ?)', [
          'note',
          JSON.stringify('x'.repeat(50_000)),
        ]);
      }),
    ).rejects.toMatchObject({ code: 'SQLITE_FULL' });
    expect(await connection.all("SELECT json FROM member WHERE name = 'note'")).toEqual([{ json: '""' }]);
    await connection.transaction(async () => undefined);
    await connection.close();
  });
});
