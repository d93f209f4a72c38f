import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeArrayBuffer } from 'geotiff';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { projectionFromEpsg } from '../../../../core/geometry/index.ts';
import { degreesToShare, shareToDegrees } from '../../../../core/imagery/index.ts';
import { openTileFile } from '../../../../electron/services/imagery/file-list.ts';
import type { TileSource } from '../../../../electron/services/imagery/tile-source.ts';
import { writePmtiles } from '../../../support/pmtiles.ts';
import { paintedPng, pixelOf, writeMbtiles } from '../../../support/tiles.ts';
import { DOWNLOAD_PORT, startTestHost, type TestHost } from '../../support/test-host.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-tiles-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function open(name: string): Promise<TileSource> {
  const source = await openTileFile(path.join(folder, name));
  if (!source.ok) throw new Error(source.error.detail);
  return source.value;
}
async function tileOf(source: TileSource, z: number, x: number, y: number): Promise<Uint8Array | null> {
  const read = await source.read({ z, x, y });
  if (!read.ok) throw new Error(read.error.detail);
  return read.value;
}
const META = { name: 'North side', attribution: '(c) <a href="x">Us</a>', bounds: '-83.1,39.9,-83,40', format: 'png' };

describe('MBTiles', () => {
  test('a tile is found in its row from the north, with what the file says of itself', async () => {
    const [north, south] = await Promise.all([paintedPng([200, 0, 0]), paintedPng([0, 0, 200])]);
    await writeMbtiles(
      path.join(folder, 'a.mbtiles'),
      [
        { z: 2, x: 1, y: 0, bytes: north },
        { z: 2, x: 1, y: 3, bytes: south },
      ],
      META,
    );
    const source = await open('a.mbtiles');
    expect(source).toMatchObject({
      name: 'North side',
      credit: '(c) Us',
      leastZoom: 2,
      mostZoom: 2,
      tilePx: 256,
      bounds: [-83.1, 39.9, -83, 40],
    });
    expect(Buffer.from((await tileOf(source, 2, 1, 0)) ?? [])).toEqual(Buffer.from(north));
    expect(Buffer.from((await tileOf(source, 2, 1, 3)) ?? [])).toEqual(Buffer.from(south));
    expect(await tileOf(source, 2, 0, 0)).toBeNull();
    await source.close();
  });

  test('tiles of 512 pixels are told as such; bounds that are none are taken from the tiles', async () => {
    await writeMbtiles(
      path.join(folder, 'a.mbtiles'),
      [{ z: 0, x: 0, y: 0, bytes: await paintedPng([1, 2, 3], 512) }],
      { bounds: 'a,b' },
    );
    const source = await open('a.mbtiles');
    expect(source).toMatchObject({ name: 'a.mbtiles', tilePx: 512 });
    // The one tile of zoom 0 is the whole map: OpenStreetMap wiki, Slippy map tilenames.
    expect(source.bounds?.map((degrees) => Number(degrees.toFixed(4)))).toEqual([-180, -85.0511, 180, 85.0511]);
    await source.close();
  });

  test('a file without pictures is refused', async () => {
    await writeMbtiles(path.join(folder, 'vector.mbtiles'), [
      { z: 0, x: 0, y: 0, bytes: Uint8Array.from([0x1f, 0x8b, 8, 0, 0]) },
    ]);
    await writeMbtiles(path.join(folder, 'empty.mbtiles'), []);
    for (const name of ['vector.mbtiles', 'empty.mbtiles']) {
      expect(await openTileFile(path.join(folder, name))).toMatchObject({
        ok: false,
        error: { code: 'format-invalid' },
      });
    }
  });
});

describe('PMTiles', () => {
  test('a tile is found by zoom, column and row', async () => {
    const bytes = await paintedPng([9, 8, 7]);
    await writePmtiles(path.join(folder, 'a.pmtiles'), { z: 1, x: 1, y: 0, bytes });
    const source = await open('a.pmtiles');
    expect(source).toMatchObject({ name: 'Ours', credit: 'Us', leastZoom: 1, mostZoom: 1, tilePx: 256 });
    expect(Buffer.from((await tileOf(source, 1, 1, 0)) ?? [])).toEqual(Buffer.from(bytes));
    expect(await tileOf(source, 1, 0, 0)).toBeNull();
    await source.close();
  });

  test('one of map shapes instead of pictures is refused', async () => {
    await writePmtiles(path.join(folder, 'v.pmtiles'), { z: 1, x: 1, y: 0, bytes: new Uint8Array(20) }, 1);
    expect(await openTileFile(path.join(folder, 'v.pmtiles'))).toMatchObject({
      ok: false,
      error: { code: 'format-invalid' },
    });
  });
});

/** 400 x 400 pixels of 0.3 m on the UTM grid, zone 17 north; its quarters red, green, blue and white. */
const ORIGIN = [326_000, 4_430_000] as const;
async function writeGeotiff(name: string, extra: Readonly<Record<string, unknown>> = {}): Promise<void> {
  const values = new Uint8Array(400 * 400 * 3);
  const colours = [
    [220, 0, 0],
    [0, 220, 0],
    [0, 0, 220],
    [250, 250, 250],
  ];
  for (let at = 0; at < 400 * 400; at += 1) {
    const quarter = (at % 400 >= 200 ? 1 : 0) + (Math.floor(at / 400) >= 200 ? 2 : 0);
    values.set(colours[quarter] ?? [], at * 3);
  }
  const bytes = writeArrayBuffer(
    values as never,
    {
      width: 400,
      height: 400,
      SamplesPerPixel: 3,
      BitsPerSample: [8, 8, 8],
      SampleFormat: [1, 1, 1],
      PhotometricInterpretation: 2,
      ModelPixelScale: [0.3, 0.3, 0],
      ModelTiepoint: [0, 0, 0, ...ORIGIN, 0],
      GTModelTypeGeoKey: 1,
      GTRasterTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: 32_617,
      ...extra,
    } as never,
  );
  await writeFile(path.join(folder, name), Buffer.from(bytes));
}

/** The colour that a tile source shows at a place. */
async function colourAt(
  source: TileSource,
  z: number,
  longitude: number,
  latitude: number,
): Promise<readonly number[]> {
  const [x, y] = degreesToShare(longitude, latitude).map((share) => share * 2 ** z) as [number, number];
  const png = await tileOf(source, z, Math.floor(x), Math.floor(y));
  return png === null ? [] : pixelOf(png, Math.floor((x % 1) * 256), Math.floor((y % 1) * 256));
}

describe('GeoTIFF', () => {
  const utm = projectionFromEpsg(32_617);
  if (utm.kind === 'unknown') throw new Error(utm.why);
  const place = (column: number, row: number) =>
    utm.projection.toDegrees(ORIGIN[0] + column * 0.3, ORIGIN[1] - row * 0.3) ?? [0, 0];

  test('its pixels lie where its map coordinates say, to a pixel', async () => {
    await writeGeotiff('a.tif');
    const source = await open('a.tif');
    // 0.3 m at 40 degrees north: 156,543 x cos(40) / 0.3 = 399,700 = 2^18.6, so zoom 19.
    expect(source).toMatchObject({ mostZoom: 19, leastZoom: 17, tilePx: 256 });
    for (const zoom of [17, 19]) {
      const by = zoom === 19 ? 2 : 6;
      for (const [column, row, colour] of [
        [200 - by, 200 - by, [220, 0, 0, 255]],
        [200 + by, 200 - by, [0, 220, 0, 255]],
        [200 - by, 200 + by, [0, 0, 220, 255]],
        [200 + by, 200 + by, [250, 250, 250, 255]],
        [by, by, [220, 0, 0, 255]],
        [400 - by, 400 - by, [250, 250, 250, 255]],
        [-by, 100, [0, 0, 0, 0]],
        [200, 400 + by, [0, 0, 0, 0]],
      ] as const) {
        expect(await colourAt(source, zoom, ...place(column, row)), `${zoom}: ${column}, ${row}`).toEqual(colour);
      }
    }
    const [west, south, east, north] = source.bounds ?? [0, 0, 0, 0];
    const [longitude, latitude] = place(200, 200);
    expect(west < longitude && longitude < east && south < latitude && latitude < north).toBe(true);
    expect(await tileOf(source, 19, 5, 5)).toBeNull();
    await source.close();
  });

  test('a picture of figures, or without a known system, is refused with the reason', async () => {
    await writeGeotiff('unknown.tif', { ProjectedCSTypeGeoKey: 29_903 });
    const heights = writeArrayBuffer(
      new Float32Array(16) as never,
      { width: 4, height: 4, BitsPerSample: [32], SampleFormat: [3] } as never,
    );
    await writeFile(path.join(folder, 'heights.tif'), Buffer.from(heights));
    const [unknown, figures] = await Promise.all(
      ['unknown.tif', 'heights.tif'].map((name) => openTileFile(path.join(folder, name))),
    );
    expect(unknown).toMatchObject({
      ok: false,
      error: { code: 'format-invalid', detail: expect.stringContaining('29903') },
    });
    expect(figures).toMatchObject({
      ok: false,
      error: { code: 'format-invalid', detail: expect.stringContaining('heights') },
    });
  });
});

describe('files that are none', () => {
  test.each(['.mbtiles', '.pmtiles', '.tif', '.tiff'])(
    '%s: nothing, noise and a cut file are refused, not thrown',
    async (ending) => {
      const sound = ending === '.mbtiles' ? 'a.mbtiles' : ending === '.pmtiles' ? 'a.pmtiles' : 'a.tif';
      if (sound === 'a.mbtiles')
        await writeMbtiles(path.join(folder, sound), [{ z: 0, x: 0, y: 0, bytes: await paintedPng([1, 1, 1]) }]);
      else if (sound === 'a.pmtiles')
        await writePmtiles(path.join(folder, sound), { z: 1, x: 1, y: 0, bytes: await paintedPng([1, 1, 1]) });
      else await writeGeotiff(sound);
      const noise = Uint8Array.from({ length: 5000 }, (_, at) => (at * 7919 + (at >> 3)) % 256);
      for (const [index, bytes] of [new Uint8Array(0), noise, Buffer.from('PMTiles')].entries()) {
        const file = path.join(folder, `bad-${index}${ending}`);
        await writeFile(file, bytes);
        expect(await openTileFile(file), file).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
      }
      expect(await openTileFile(path.join(folder, `gone${ending}`))).toMatchObject({
        ok: false,
        error: { code: 'file-not-found' },
      });
    },
  );

  test('another ending is not known', async () => {
    await writeFile(path.join(folder, 'a.ecw'), 'x');
    expect(await openTileFile(path.join(folder, 'a.ecw'))).toMatchObject({
      ok: false,
      error: { code: 'format-unknown' },
    });
  });
});

describe('through the host', () => {
  let host: TestHost;
  afterEach(() => host.close());

  test('a chosen file is listed, served, kept for the next start, and taken off the list', async () => {
    const file = path.join(folder, 'a.mbtiles');
    const bytes = await paintedPng([200, 0, 0]);
    await writeMbtiles(file, [{ z: 2, x: 1, y: 0, bytes }], META);
    const port = { ...DOWNLOAD_PORT, pickFile: async () => ({ kind: 'path' as const, file }) };
    host = await startTestHost({ port });
    const screen = host.screen('one');
    const picked = await screen.must('file.pick', { purpose: 'background' });
    if (picked.kind !== 'picked') throw new Error('not picked');
    expect(picked.text).toBeNull();
    const opened = await screen.must('background.open', { token: picked.token });
    expect(opened).toMatchObject({ kind: 'file', name: 'North side', asks: null, fault: null });
    expect(JSON.stringify(opened)).not.toContain(folder);
    const tile = (x: number) => opened.address.replace('{z}', '2').replace('{x}', String(x)).replace('{y}', '0');
    expect(Buffer.from((await host.services.picture(tile(1)))?.bytes ?? [])).toEqual(Buffer.from(bytes));
    // Where the file has no tile there is a clear pixel, and no trouble.
    expect(pixelOf((await host.services.picture(tile(0)))?.bytes ?? new Uint8Array(), 0, 0)).toEqual([0, 0, 0, 0]);
    const next = await startTestHost({ dataFolder: host.folder });
    expect((await next.screen('s').must('background.list', {})).backgrounds.map(({ id }) => id)).toContain(opened.id);
    await rm(file);
    await next.close();
    const third = await startTestHost({ dataFolder: host.folder });
    const gone = (await third.screen('s').must('background.list', {})).backgrounds.find(({ id }) => id === opened.id);
    expect(gone?.fault?.code).toBe('file-not-found');
    await third.screen('s').must('background.forget', { backgroundId: opened.id });
    expect((await third.screen('s').must('background.list', {})).backgrounds.map(({ id }) => id)).not.toContain(
      opened.id,
    );
    await third.close();
  });

  test('files in the folder of backgrounds are listed by themselves', async () => {
    host = await startTestHost();
    await mkdir(path.join(host.folder, 'backgrounds'));
    await writeMbtiles(path.join(host.folder, 'backgrounds', 'a.mbtiles'), [
      { z: 0, x: 0, y: 0, bytes: await paintedPng([1, 1, 1]) },
    ]);
    await writeFile(path.join(host.folder, 'backgrounds', 'notes.txt'), 'x');
    const files = (await host.screen('s').must('background.list', {})).backgrounds.filter(
      ({ kind }) => kind === 'file',
    );
    expect(files.map(({ name }) => name)).toEqual(['a.mbtiles']);
  });
});

test('shares of the map and degrees are each other turned round', () => {
  for (const [longitude, latitude] of [
    [-83, 40],
    [0, 0],
    [179.9, -60],
  ] as const) {
    const [x, y] = degreesToShare(longitude, latitude);
    const back = shareToDegrees(x, y);
    expect(back[0]).toBeCloseTo(longitude, 10);
    expect(back[1]).toBeCloseTo(latitude, 10);
  }
});
