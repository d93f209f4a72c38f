import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BoundedSource, openBoundedSource } from '../../../../electron/services/files/index.ts';

let folder: string;
let source: BoundedSource;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-source-'));
  await writeFile(path.join(folder, 'ten.bin'), Uint8Array.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9));
  source = await openBoundedSource(path.join(folder, 'ten.bin'));
});
afterAll(async () => {
  await source.close();
  await rm(folder, { recursive: true, force: true });
});

describe('a file read in parts', () => {
  it('gives the parts that are asked for, and zeros a little beyond the end', async () => {
    expect(source.fileSize).toBe(10);
    const parts = await source.fetch([
      { offset: 2, length: 3 },
      { offset: 8, length: 4 },
      { offset: 12, length: 1 },
    ]);
    expect(parts.map((each) => [...new Uint8Array(each)])).toEqual([[2, 3, 4], [8, 9, 0, 0], [0]]);
  });

  it.each([
    [0, 4_000_000_000],
    [4_000_000_000, 1],
    [-1, 2],
    [0, -1],
    [Number.NaN, 1],
  ])('refuses %d and %d bytes without making room for them', async (offset, length) => {
    await expect(source.fetchSlice({ offset, length })).rejects.toThrow(RangeError);
  });

  it('rejects where there is no file', async () => {
    await expect(openBoundedSource(path.join(folder, 'none'))).rejects.toMatchObject({ code: 'ENOENT' });
  });
});
