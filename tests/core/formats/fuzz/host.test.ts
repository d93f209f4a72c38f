import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AppError, Result } from '../../../../core/base/index.ts';
import { readElevationFile, readGroundFile } from '../../../../electron/services/ground/index.ts';
import { heightBytes, writeGeopackage, writeInto } from '../../../electron/services/ground/files.ts';
import { bundleProgram } from '../../../electron/support/bundle.ts';
import { openTally } from '../../../support/fuzz.ts';
import { mutate } from '../../../support/mutate.ts';
import { archive, partsShape, shpFile, WGS84_PRJ } from '../shapefile/build.ts';
import { ROUNDS } from './fuzz.ts';

let worker: Awaited<ReturnType<typeof bundleProgram>>;
let folder: string;
beforeAll(async () => {
  worker = await bundleProgram('electron/services/ground/ground-worker.ts');
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-fuzz-'));
}, 60_000);
afterAll(async () => {
  await worker.remove();
  await rm(folder, { recursive: true, force: true });
});

type Read = (file: string) => Promise<Result<unknown>>;
const readGround: Read = (file) => readGroundFile(file, { workerFile: worker.file });
const readHeights: Read = (file) =>
  readElevationFile(
    file,
    [
      [-83, 40],
      [-82.99, 39.99],
    ],
    { workerFile: worker.file },
  );

const heights = (isPacked: boolean): Uint8Array =>
  heightBytes({
    width: 40,
    height: 30,
    // Packed small, so that changes also fall on the fields and not all on pixels, whose check sum they would break.
    values: Array.from({ length: 1200 }, (_, index) => 200 + (index % 4)),
    degrees: 4326,
    corner: [-83.01, 40.01],
    pixel: [0.001, 0.001],
    noData: '-9999',
    isPacked,
  });

/**
 * Mutated files read as the program reads them, in a thread of its own. An answer is a reading or a refusal with a code and a
 * place; `internal` would be a fault, `file-not-readable` a thread that hung, and the peak of memory is the process's own.
 */
const CASES: readonly (readonly [name: string, seed: () => Promise<Uint8Array>, read: Read])[] = [
  ['lots.gpkg', geopackage, readGround],
  ['lots.zip', async () => archive({ 'a.shp': shpFile([SQUARE]), 'a.prj': WGS84_PRJ }), readGround],
  ['plain.tif', async () => heights(false), readHeights],
  ['packed.tif', async () => heights(true), readHeights],
];
const SQUARE = partsShape(5, [
  [
    [0, 0],
    [0, 1],
    [1, 1],
    [0, 0],
  ],
]);

async function geopackage(): Promise<Uint8Array> {
  const file = path.join(folder, 'seed.gpkg');
  await rm(file, { force: true });
  await writeGeopackage(file);
  return new Uint8Array(await readFile(file));
}

describe('mutated files read by the host', () => {
  const rounds = Math.ceil(ROUNDS / 2);
  it.each(CASES)(`%s: ${rounds} of them`, { timeout: 1_200_000 }, async (name, makeSeed, read) => {
    const seed = await makeSeed();
    const whole = await read(await writeInto(folder, name, seed));
    expect(whole.ok, name).toBe(true);
    const tally = openTally(`host, ${name}`);
    for (let round = 0; round < rounds; round += 1) {
      const file = await writeInto(folder, name, mutate(seed, round));
      const begin = performance.now();
      const result = await read(file);
      tally.note(result.ok ? 'read' : result.error.code, performance.now() - begin);
      if (!result.ok) checkRefusal(result.error, `${name}, seed ${round}`);
    }
    const outcomes = tally.close();
    // Both must come up, or the mutations reach nothing or everything.
    expect(outcomes.get('read') ?? 0).toBeGreaterThan(0);
    expect(outcomes.size).toBeGreaterThan(1);
  });
});

function checkRefusal({ code, where, detail }: AppError, label: string): void {
  expect(['internal', 'file-not-readable'], `${label}: ${detail}`).not.toContain(code);
  expect(where.length, label).toBeGreaterThan(0);
}
