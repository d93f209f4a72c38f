import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeArrayBuffer } from 'geotiff';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { degreesToShare } from '../../../../core/imagery/index.ts';
import { openTileFile } from '../../../../electron/services/imagery/file-list.ts';
import { openTally, WHOLE_FUZZ } from '../../../support/fuzz.ts';
import { mutate } from '../../../support/mutate.ts';
import { writePmtiles } from '../../../support/pmtiles.ts';
import { paintedPng, writeMbtiles } from '../../../support/tiles.ts';

/** Mutated files of each kind. */
const ROUNDS = WHOLE_FUZZ ? 2000 : 100;
/** What one file may take, ms; machines that test are slow and shared, so this is several times the promise of 2 s. */
const MOST_MS = 8000;
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-tile-fuzz-'));
  const bytes = await paintedPng([1, 2, 3], 16);
  await writeMbtiles(path.join(folder, 'a.mbtiles'), [{ z: 1, x: 1, y: 0, bytes }], { name: 'a', bounds: '0,0,10,10' });
  await writePmtiles(path.join(folder, 'a.pmtiles'), { z: 1, x: 1, y: 0, bytes });
  const picture = writeArrayBuffer(
    new Uint8Array(32 * 32 * 3) as never,
    {
      width: 32,
      height: 32,
      SamplesPerPixel: 3,
      BitsPerSample: [8, 8, 8],
      SampleFormat: [1, 1, 1],
      PhotometricInterpretation: 2,
      ModelPixelScale: [0.001, 0.001, 0],
      ModelTiepoint: [0, 0, 0, -83, 40, 0],
      GTModelTypeGeoKey: 2,
      GTRasterTypeGeoKey: 1,
      GeographicTypeGeoKey: 4326,
    } as never,
  );
  await writeFile(path.join(folder, 'a.tif'), Buffer.from(picture));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Opens a file and reads a few tiles, as the map does. An answer is a source or a refusal with a code and a place. */
async function use(file: string): Promise<string> {
  const source = await openTileFile(file);
  if (!source.ok) return source.error.code;
  const { bounds, leastZoom, mostZoom } = source.value;
  const [longitude, latitude] =
    bounds === null ? [-83, 40] : [(bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2];
  for (const z of [leastZoom, mostZoom]) {
    const [x, y] = degreesToShare(longitude, latitude).map((share) => Math.floor(share * 2 ** z)) as [number, number];
    const read = await source.value.read({ z, x, y });
    if (!read.ok) expect(read.error.where).not.toBe('');
  }
  await source.value.close();
  return 'opened';
}

describe('mutated files of tiles never crash, hang or take too much memory', () => {
  test.each(['a.mbtiles', 'a.pmtiles', 'a.tif'])(
    '%s',
    async (name) => {
      const sound = await readFile(path.join(folder, name));
      expect(await use(path.join(folder, name))).toBe('opened');
      const file = path.join(folder, `bad-${name}`);
      const tally = openTally(`tiles, ${name}`);
      for (let seed = 1; seed <= ROUNDS; seed += 1) {
        await writeFile(file, mutate(sound, seed));
        const start = performance.now();
        const code = await use(file);
        const tookMs = performance.now() - start;
        expect(tookMs, `${name}, seed ${seed}`).toBeLessThan(MOST_MS);
        tally.note(code === 'opened' ? 'read' : code, tookMs);
      }
      const codes = tally.close();
      expect([...codes.keys()].every((code) => ['read', 'format-invalid', 'file-not-readable'].includes(code))).toBe(
        true,
      );
      expect(codes.size).toBeGreaterThan(1);
    },
    600_000,
  );
});
