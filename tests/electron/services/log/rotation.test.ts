import type * as Files from 'node:fs';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createLog } from '../../../../electron/services/log/index.ts';

/** Which renaming from now on fails; it and all later ones, as where the program has ended there. */
const disk = vi.hoisted(() => ({ failAt: Number.POSITIVE_INFINITY }));
vi.mock('node:fs', async (original) => {
  const real: typeof Files = await original();
  const renameSync = (from: string, to: string): void => {
    if (disk.failAt <= 0) throw Object.assign(new Error('on purpose'), { code: 'EACCES' });
    disk.failAt -= 1;
    real.renameSync(from, to);
  };
  return { ...real, renameSync, default: { ...real, renameSync } };
});

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-rotation-'));
});
afterEach(async () => {
  disk.failAt = Number.POSITIVE_INFINITY;
  await rm(folder, { recursive: true, force: true });
});

/** Numbers of the lines in all files, the oldest first. */
async function numbers(): Promise<readonly number[]> {
  const texts = await Promise.all((await readdir(folder)).map((name) => readFile(path.join(folder, name), 'utf8')));
  const lines = texts.flatMap((text) => text.trimEnd().split('\n'));
  return lines.map((line) => (JSON.parse(line) as { readonly number: number }).number).toSorted((a, b) => a - b);
}

/** Eleven lines fill a file. */
const LONG = 'x'.repeat(100_000);

test.each([0, 1, 2])(
  'a new file that is begun and breaks off after %d renamings loses no line and stops nothing',
  async (failAt) => {
    const log = createLog(folder, () => new Date(0));
    const write = (from: number, to: number): void => {
      for (let number = from; number < to; number += 1) log('info', 'test', 'line', { number, text: LONG });
    };
    // Three files by now, the newest of which is full.
    write(0, 33);
    expect(await readdir(folder)).toHaveLength(3);
    disk.failAt = failAt;
    write(33, 35);
    disk.failAt = Number.POSITIVE_INFINITY;
    write(35, 40);
    expect(await numbers()).toEqual(Array.from({ length: 40 }, (_, number) => number));
  },
);
