import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { projectionFromEpsg } from '../../../../core/geometry/index.ts';
import { readGroundFile } from '../../../../electron/services/ground/index.ts';
import { archive, partsShape, shpFile, WGS84_PRJ } from '../../../core/formats/shapefile/build.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';
import { type HeightFile, heightBytes, writeGeopackage, writeInto } from './files.ts';

let worker: Awaited<ReturnType<typeof bundleProgram>>;
let folder: string;
beforeAll(async () => {
  worker = await bundleProgram('electron/services/ground/ground-worker.ts');
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-ground-'));
}, 60_000);
afterAll(async () => {
  await worker.remove();
  await rm(folder, { recursive: true, force: true });
});

const read = (file: string, options: { readonly signal?: AbortSignal } = {}) =>
  readGroundFile(file, { workerFile: worker.file, ...options });

const lots = (count: number): Uint8Array => {
  const features = Array.from({ length: count }, (_, index) => ({
    type: 'Feature',
    properties: { name: `lot ${index}` },
    geometry: { type: 'Point', coordinates: [-71, 42] },
  }));
  return new TextEncoder().encode(JSON.stringify({ type: 'FeatureCollection', features }));
};

describe('reading a file in a thread of its own', () => {
  it('reads text and archives by what is in them', async () => {
    const square = partsShape(5, [
      [
        [0, 0],
        [0, 1],
        [1, 1],
        [0, 0],
      ],
    ]);
    const zip = archive({ 'a.shp': shpFile([square]), 'a.prj': WGS84_PRJ });
    const shapes = await read(await writeInto(folder, 'lots.data', zip));
    expect(shapes.ok && shapes.value.formatId).toBe('shapefile');
    const outlines = await read(await writeInto(folder, 'lots.txt', lots(3)));
    expect(outlines.ok && outlines.value.formatId).toBe('geojson');
    expect(outlines.ok && outlines.value.layers[0]?.features).toHaveLength(3);
  });

  it('reads letters of any encoding that the runtime knows', async () => {
    const { dbfFile, pointShape } = await import('../../../core/formats/shapefile/build.ts');
    const dbf = dbfFile([{ name: 'NAME', type: 'C', bytes: 4 }], [[Uint8Array.of(0xec)]]);
    const zip = archive({
      'a.shp': shpFile([pointShape([1, 2])]),
      'a.dbf': dbf,
      'a.cpg': 'CP1250',
      'a.prj': WGS84_PRJ,
    });
    const source = await read(await writeInto(folder, 'letters.zip', zip));
    expect(source.ok && source.value.layers[0]?.features[0]?.attributes.NAME).toBe('\u011b');
  });

  it('says what is wrong with a missing file, a folder, and a file of no kind', async () => {
    expect(await read(path.join(folder, 'none.zip'))).toMatchObject({ ok: false, error: { code: 'file-not-found' } });
    expect(await read(folder)).toMatchObject({ ok: false, error: { code: 'file-not-readable' } });
    const noise = await writeInto(folder, 'noise.bin', Uint8Array.of(1, 2, 3));
    expect(await read(noise)).toMatchObject({ ok: false, error: { code: 'format-unknown' } });
  });

  it('refuses a file that is larger than can be read, without reading it', async () => {
    const file = path.join(folder, 'huge.zip');
    const { open } = await import('node:fs/promises');
    const handle = await open(file, 'w');
    await handle.truncate(513 * 1024 * 1024);
    await handle.close();
    expect(await read(file)).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
    await rm(file);
  });

  it('ends when it is cancelled, before and during the work', async () => {
    const file = await writeInto(folder, 'many.geojson', lots(100_000));
    expect(await read(file, { signal: AbortSignal.abort() })).toMatchObject({
      ok: false,
      error: { code: 'cancelled' },
    });
    const controller = new AbortController();
    const result = readGroundFile(file, {
      workerFile: worker.file,
      signal: controller.signal,
      onProgress: () => controller.abort(),
    });
    expect(await result).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  it('survives a thread that hangs, one that eats all memory, and one that dies', async () => {
    const file = await writeInto(folder, 'small.geojson', lots(1));
    const run = async (program: string) => {
      const workerFile = await writeInto(folder, 'worker.cjs', program);
      return readGroundFile(file, { workerFile });
    };
    const begun = "require('node:worker_threads').parentPort.postMessage({ kind: 'begun' });";
    expect(await run(`${begun} for (;;);`)).toMatchObject({ ok: false, error: { code: 'file-not-readable' } });
    expect(
      await run(`${begun} const all = []; for (;;) all.push(new Array(1_000_000).fill(all.length + 0.5));`),
    ).toMatchObject({
      ok: false,
      error: { code: 'file-too-large' },
    });
    expect(await run(`${begun} throw new Error('broken');`)).toMatchObject({ ok: false, error: { code: 'internal' } });
    expect(await run('process.exit();')).toMatchObject({ ok: false, error: { code: 'internal' } });
  }, 60_000);
});

describe('reading a GeoPackage', () => {
  it('reads its layers with their names, and writes nothing beside it', async () => {
    const file = path.join(folder, 'county.gpkg');
    await writeGeopackage(file);
    const before = await readFile(file);
    const names = await readdir(folder);
    const source = await read(file);
    if (!source.ok) throw new Error(source.error.detail);
    const [layer] = source.value.layers;
    expect(layer).toMatchObject({ name: 'All the lots', fields: ['street "name"'], coordinates: { kind: 'degrees' } });
    expect(layer?.features.map((each) => [each.id, each.attributes['street "name"'], each.geometry?.type])).toEqual([
      ['1', 'Elm', 'Polygon'],
      ['2', null, 'Polygon'],
      ['7', 'Oak', undefined],
    ]);
    expect(await readFile(file)).toEqual(before);
    expect(await readdir(folder)).toEqual(names);
  });

  it('tells of a layer that is a view or is not there, and reads the others', async () => {
    const file = path.join(folder, 'views.gpkg');
    await writeGeopackage(
      file,
      `CREATE VIEW seen AS SELECT * FROM lots;
       INSERT INTO gpkg_geometry_columns VALUES ('seen', 'geom', 'POLYGON', 4326), ('gone', 'geom', 'POLYGON', 4326);`,
    );
    const source = await read(file);
    expect(source.ok && source.value.layers.map((each) => each.name)).toEqual(['All the lots']);
    expect(source.ok && source.value.issues.map((each) => [each.code, each.where])).toEqual([
      ['layer-not-read', 'views.gpkg, layer seen'],
      ['layer-not-read', 'views.gpkg, layer gone'],
    ]);
  });

  it('ends an endless statement hidden in the file', async () => {
    const file = path.join(folder, 'endless.gpkg');
    await writeGeopackage(
      file,
      `DROP TABLE gpkg_contents;
       CREATE VIEW gpkg_contents AS WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n)
         SELECT 'none' AS table_name, x AS identifier FROM n;`,
    );
    const before = process.cpuUsage();
    const result = await read(file);
    expect(result).toMatchObject({ ok: false, error: { code: 'file-not-readable' } });
    // Two seconds of the processor, half a second for the size of the file, and what the rest of this process took meanwhile.
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(4000);
  });

  it('says that a damaged one is damaged', async () => {
    const file = path.join(folder, 'damaged.gpkg');
    await writeGeopackage(file);
    const bytes = await readFile(file);
    await writeFile(file, bytes.subarray(0, 3000));
    expect(await read(file)).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
  });
});

describe('reading ground through the contract', () => {
  let host: TestHost;
  let screen: TestClient;
  beforeEach(async () => {
    host = await startTestHost({ groundWorkerFile: worker.file });
    screen = host.screen('one');
  });
  afterEach(() => host.close());

  const upload = async (name: string, bytes: Uint8Array, purpose: 'ground' | 'heights' = 'ground') =>
    (await screen.must('file.upload', { purpose, name, base64: Buffer.from(bytes).toString('base64') })).token;
  const passing = () => path.join(host.folder, 'received', 'passing');

  it('reads what the page sent, tells how far it is, and keeps nothing', async () => {
    const token = await upload('Elm Court lots.geojson', lots(60_000));
    expect(await readdir(passing())).toHaveLength(1);
    const source = await screen.must('ground.read', { token });
    expect(source.layers[0]?.features).toHaveLength(60_000);
    expect(source.layers[0]?.features[0]?.where).toBe('Elm Court lots.geojson, features[0]');
    expect(screen.events.some((event) => event.name === 'ground.progress')).toBe(true);
    expect(await readdir(passing())).toEqual([]);
    expect(await screen.call('ground.read', { token })).toMatchObject({ ok: false, error: { code: 'file-not-found' } });
  });

  it('keeps nothing of a file that cannot be read either, and knows no token of others', async () => {
    const token = await upload('../../noise', Uint8Array.of(0, 1));
    expect((await screen.call('ground.read', { token })).ok).toBe(false);
    expect(await readdir(passing())).toEqual([]);
    expect(await screen.call('ground.read', { token: 'abc' })).toMatchObject({ error: { code: 'not-allowed' } });
    expect(await screen.call('ground.elevation', { token: 'abc', positions: [[0, 0]] })).toMatchObject({
      error: { code: 'not-allowed' },
    });
  });

  it('ends a reading that is cancelled, or whose page goes', async () => {
    const first = await upload('a.geojson', lots(150_000));
    const reading = screen.call('ground.read', { token: first });
    await screen.must('ground.cancel', { token: first });
    expect(await reading).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    const second = await upload('b.geojson', lots(150_000));
    const other = screen.call('ground.read', { token: second });
    await host.services.disconnect('one');
    expect(await other).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await readdir(passing())).toEqual([]);
  });

  it('gives heights lawn after lawn, and removes the file when the page goes', async () => {
    const bytes = heightBytes({ ...SLOPE, degrees: 4326, corner: [-71.1, 42.3], pixel: [0.001, 0.001] });
    const token = await upload('heights.tif', bytes, 'heights');
    const at = { token, positions: [[-71.0985, 42.2985]] as [number, number][] };
    expect((await screen.must('ground.elevation', at)).heightsM).toEqual([expect.closeTo(11, 6)]);
    expect((await screen.must('ground.elevation', at)).heightsM).toEqual([expect.closeTo(11, 6)]);
    await host.services.disconnect('one');
    expect(await readdir(passing())).toEqual([]);
    expect(existsSync(host.folder)).toBe(true);
  });
});

/** Three by three pixels: 0, 1, 2 / 10, 11, 12 / 20, 21, 22; the middle of pixel (c, r) has the height c + 10 r. */
const SLOPE: HeightFile = { width: 3, height: 3, values: [0, 1, 2, 10, 11, 12, 20, 21, 22] };

describe('heights out of a GeoTIFF', () => {
  const heights = async (file: HeightFile, positions: readonly (readonly [number, number])[]) => {
    const { readElevationFile } = await import('../../../../electron/services/ground/index.ts');
    const made = await writeInto(folder, 'heights.tif', heightBytes(file));
    return readElevationFile(made, positions, { workerFile: worker.file });
  };
  const must = async (file: HeightFile, positions: readonly (readonly [number, number])[]) => {
    const answer = await heights(file, positions);
    if (!answer.ok) throw new Error(answer.error.detail);
    return answer.value;
  };
  const DEGREES: HeightFile = { ...SLOPE, degrees: 4326, corner: [10, 50], pixel: [1, 1] };

  it('reads between the middles of pixels in proportion', async () => {
    const { heightsM, isUnitStated, unit } = await must(DEGREES, [
      [10.5, 49.5],
      [11.5, 48.5],
      [11, 49],
      [12.25, 48.25],
      [10.1, 49.9],
      [9.9, 49],
      [11, 46.9],
    ]);
    // Middles: 0 and 11; between four: (0 + 1 + 10 + 11) / 4; 1.75 columns and 1.25 rows on; the corner pixel itself; outside.
    expect(heightsM).toEqual([0, 11, 5.5, 1.75 + 12.5, 0, null, null]);
    expect([unit, isUnitStated]).toEqual(['metres', false]);
  });

  it('lays pixels that stand for points half a pixel further', async () => {
    const { heightsM } = await must({ ...DEGREES, isPoint: true }, [[11, 49]]);
    expect(heightsM).toEqual([11]);
  });

  it('turns feet to metres where the file says feet', async () => {
    const feet = await must({ ...DEGREES, verticalUnit: 9002 }, [[11.5, 48.5]]);
    expect(feet.heightsM[0]).toBeCloseTo(11 * 0.3048, 6);
    const survey = await must({ ...DEGREES, verticalUnit: 9003 }, [[11.5, 48.5]]);
    expect(survey.heightsM[0]).toBeCloseTo((11 * 1200) / 3937, 6);
    expect([survey.unit, survey.isUnitStated]).toEqual(['US survey feet', true]);
  });

  it('finds the pixels of a turned picture by its matrix', async () => {
    // Columns run north, rows run east: x = 10 + row, y = 50 + column.
    const matrix = [0, 1, 0, 10, 1, 0, 0, 50, 0, 0, 0, 0, 0, 0, 0, 1];
    const { heightsM } = await must({ ...SLOPE, degrees: 4326, matrix }, [
      [12.5, 50.5],
      [10.5, 52.5],
    ]);
    expect(heightsM).toEqual([20, 2]);
  });

  it('goes through the map system of the file', async () => {
    const projected = projectionFromEpsg(26986);
    if (projected.kind === 'unknown') throw new Error(projected.why);
    const at = projected.projection.toDegrees(230_015, 899_985) ?? [0, 0];
    const file: HeightFile = { ...SLOPE, projected: 26986, corner: [230_000, 900_000], pixel: [10, 10] };
    const { heightsM, system } = await must(file, [at]);
    expect(heightsM[0]).toBeCloseTo(11, 4);
    expect(system).toContain('Massachusetts');
  });

  it('gives no height where the file has no data, and none made of it', async () => {
    const values = [0, 1, 2, 10, -9999, 12, 20, 21, 22];
    const { heightsM } = await must({ ...DEGREES, values, noData: '-9999' }, [
      [11.5, 48.5],
      [11, 49],
      [10.9, 49.1],
    ]);
    // The pixel itself; on its corner, which belongs to it; and a place in the pixel before, which keeps its own height.
    expect(heightsM).toEqual([null, null, 0]);
  });

  it.each<[string, HeightFile]>([
    ['of several bands', { ...DEGREES, bands: 3, values: [...SLOPE.values, ...SLOPE.values, ...SLOPE.values] }],
    ['without a system', { ...SLOPE, corner: [10, 50], pixel: [1, 1] }],
    ['of an unknown system', { ...SLOPE, projected: 27700, corner: [10, 50], pixel: [1, 1] }],
    ['without a place', { ...SLOPE, degrees: 4326 }],
    ['with pixels of no size', { ...DEGREES, pixel: [0, 0] }],
  ])('refuses a picture %s', async (_, file) => {
    expect(await heights(file, [[11, 49]])).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
  });

  it('refuses what is no picture', async () => {
    const { readElevationFile } = await import('../../../../electron/services/ground/index.ts');
    const file = await writeInto(folder, 'no.tif', 'hello');
    const answer = await readElevationFile(file, [[0, 0]], { workerFile: worker.file });
    expect(answer).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
  });
});
