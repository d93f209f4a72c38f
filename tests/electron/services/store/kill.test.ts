import { copyFile, mkdtemp, rm, stat, truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { emptyBook } from '../../../../core/book/index.ts';
import { createStoreFile, openConnection, openStore } from '../../../../electron/services/store/index.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startChild } from '../../support/child.ts';

/** SWARDWAY_KILL_ROUNDS asks for more rounds. */
const ROUNDS = Number(process.env.SWARDWAY_KILL_ROUNDS ?? 15);
const LONGEST_MS = 120;

let folder = '';
let program: Awaited<ReturnType<typeof bundleProgram>>;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-kill-'));
  program = await bundleProgram('tests/electron/support/store-program.ts');
}, 60_000);
afterAll(async () => {
  await program.remove();
  await rm(folder, { recursive: true, force: true });
});

const acknowledged = (output: string): number =>
  Math.max(0, ...[...output.matchAll(/^stored (\d+)\n/gm)].map((match) => Number(match[1])));

test(`no stored edit is lost and none is half there after ${ROUNDS} kills in mid-write`, async () => {
  const file = path.join(folder, 'a.swardway');
  await createStoreFile(file, emptyBook('a', 'A'));
  const random = createRandom(20_260_301);
  let killedInWriting = 0;
  let told = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const child = startChild(process.execPath, [program.file, 'write', file]);
    await child.until('stored ');
    await wait(random.unit() * LONGEST_MS);
    child.process.kill('SIGKILL');
    expect((await child.ended).signal).toBe('SIGKILL');
    told = Math.max(told, acknowledged(child.output()));
    const leftLog = ((await stat(`${file}-wal`).catch(() => null))?.size ?? 0) > 0;
    if (leftLog) killedInWriting += 1;

    const open = await openStore(file);
    if (!open.ok) throw new Error(`round ${round}: ${open.error.detail}`);
    expect(open.value.remark).toEqual(leftLog ? expect.stringContaining('ended without closing') : null);
    const { book, revision } = open.value.stored;
    expect(revision).toBeGreaterThanOrEqual(told);
    // Edit N sets the note to N and adds property N: the three agree or the edit is half there.
    expect(book.note).toBe(String(revision));
    expect(book.properties.map(({ id }) => id)).toEqual(Array.from({ length: revision }, (_, at) => `p${at + 1}`));
    await open.value.close();
  }
  expect(told).toBeGreaterThan(ROUNDS);
  expect(killedInWriting).toBeGreaterThan(0);
  const connection = await openConnection(file, 'read');
  expect(await connection.all('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
  expect(await connection.all('PRAGMA foreign_key_check')).toEqual([]);
  await connection.close();
}, 180_000);

test('a log that was cut off anywhere gives back some whole edit', async () => {
  const file = path.join(folder, 'b.swardway');
  await createStoreFile(file, emptyBook('b', 'B'));
  const child = startChild(process.execPath, [program.file, 'write', file]);
  await child.until('stored 12\n');
  child.process.kill('SIGKILL');
  await child.ended;
  const { size } = await stat(`${file}-wal`);
  expect(size).toBeGreaterThan(0);
  const random = createRandom(7);
  const seen = new Set<number>();
  for (let cut = 0; cut < 12; cut += 1) {
    const copy = path.join(folder, `cut-${cut}.swardway`);
    await copyFile(file, copy);
    await copyFile(`${file}-wal`, `${copy}-wal`);
    await truncate(`${copy}-wal`, Math.floor((size * cut) / 12 + random.unit() * 500));
    const open = await openStore(copy);
    if (!open.ok) throw new Error(open.error.detail);
    const { book, revision } = open.value.stored;
    seen.add(revision);
    expect(book.note).toBe(revision === 0 ? '' : String(revision));
    expect(book.properties).toHaveLength(revision);
    await open.value.close();
  }
  expect(seen.size).toBeGreaterThan(3);
}, 60_000);
