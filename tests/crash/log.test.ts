import { copyFile, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createRandom } from '../../core/base/index.ts';
import { emptyBook } from '../../core/book/index.ts';
import { createStoreFile, openStore } from '../../electron/services/store/index.ts';
import { bundleProgram } from '../electron/support/bundle.ts';
import { startChild } from '../electron/support/child.ts';

/** Every frame of the log where that is asked for, every fifth otherwise. */
const EVERY = process.env.npm_lifecycle_event === 'test:crash' ? 1 : 5;

/** Sizes of the log's header and of a frame's header, bytes: "Database File Format", parts 4.1 and 4.2, sqlite.org/fileformat2.html. */
const LOG_HEADER = 32;
const FRAME_HEADER = 24;
const EDITS = 12;

let folder = '';
let book = '';
let log: Buffer;
let frames: readonly number[] = [];

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-log-'));
  book = path.join(folder, 'book.swardway');
  await createStoreFile(book, emptyBook('b', 'B'));
  const program = await bundleProgram('tests/crash/crash-program.ts');
  const child = startChild(process.execPath, [program.file, 'edit', folder]);
  await child.until(`stored ${EDITS}\n`);
  child.process.kill('SIGKILL');
  await child.ended;
  await program.remove();
  log = await readFile(`${book}-wal`);
  const page = log.readUInt32BE(8);
  const whole = Math.floor((log.length - LOG_HEADER) / (FRAME_HEADER + page));
  frames = Array.from({ length: whole }, (_, index) => LOG_HEADER + index * (FRAME_HEADER + page));
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Opens the book with another log beside it and says how many edits it has, having checked that each of them is whole. */
async function editsWith(bytes: Buffer, label: string): Promise<number> {
  const copy = path.join(folder, 'copy.swardway');
  await copyFile(book, copy);
  await writeFile(`${copy}-wal`, bytes);
  const open = await openStore(copy);
  if (!open.ok) throw new Error(`${label}: ${open.error.detail}`);
  const { stored } = open.value;
  await open.value.close();
  expect(stored.book.note, label).toBe(stored.revision === 0 ? '' : String(stored.revision));
  expect(stored.book.properties, label).toHaveLength(stored.revision);
  await rm(copy);
  return stored.revision;
}

test('a log that was cut off before, in or after any frame gives back some whole edit, the more the later', async () => {
  expect((await stat(book)).size).toBeGreaterThan(0);
  expect(frames.length).toBeGreaterThan(2 * EDITS);
  const random = createRandom(7);
  let before = 0;
  const seen = new Set<number>();
  for (const [index, at] of frames.entries()) {
    if (index % EVERY !== 0) continue;
    const cut = at + Math.floor(random.unit() * (frames[1] ?? 0));
    for (const end of [at, cut]) {
      const edits = await editsWith(log.subarray(0, end), `cut at byte ${end}`);
      expect(edits, `cut at byte ${end}`).toBeGreaterThanOrEqual(before);
      before = edits;
      seen.add(edits);
    }
  }
  expect(seen.size).toBeGreaterThan(3);
  expect(await editsWith(log, 'the whole log')).toBeGreaterThanOrEqual(EDITS);
}, 600_000);

test('a log with one bit turned in any frame gives back a whole edit from before it', async () => {
  const random = createRandom(11);
  const all = await editsWith(log, 'the whole log');
  let fewer = 0;
  for (const [index, at] of frames.entries()) {
    if (index % EVERY !== 0) continue;
    const bytes = Buffer.from(log);
    const byte = at + Math.floor(random.unit() * ((frames[1] ?? 0) - LOG_HEADER));
    bytes.writeUInt8(bytes.readUInt8(byte) ^ (1 << Math.floor(random.unit() * 8)), byte);
    const edits = await editsWith(bytes, `a bit of byte ${byte} turned`);
    expect(edits, `a bit of byte ${byte} turned`).toBeLessThanOrEqual(all);
    if (edits < all) fewer += 1;
  }
  expect(fewer).toBeGreaterThan(0);
}, 600_000);
