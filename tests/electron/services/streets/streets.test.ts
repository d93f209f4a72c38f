import { readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { archive, dbfFile, partsShape, shpFile, WGS84_PRJ } from '../../../core/formats/shapefile/build.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

let host: TestHost;
let screen: TestClient;
beforeEach(async () => {
  host = await startTestHost();
  screen = host.screen('one');
});
afterEach(() => host.close());

const street = (FULLNAME: string, from: number, to: number, latitude: number) => ({
  type: 'Feature',
  properties: { FULLNAME, LFROMADD: from, LTOADD: to },
  geometry: {
    type: 'LineString',
    coordinates: [
      [-83, latitude],
      [-82.998, latitude],
    ],
  },
});
async function load(name: string, features: readonly unknown[]) {
  const base64 = Buffer.from(JSON.stringify({ type: 'FeatureCollection', features })).toString('base64');
  const { token } = await screen.must('file.upload', { purpose: 'streets', name, base64 });
  return screen.call('places.load', { token });
}

test('a street file is taken in once, kept for the next start in a small form, and looked addresses up in', async () => {
  expect(await screen.must('places.find', { addresses: ['5 Oak St'] })).toMatchObject([{ kind: 'not-placed' }]);
  expect(await load('north.geojson', [street('Oak St', 1, 99, 40), street('', 1, 9, 40)])).toMatchObject({
    ok: true,
    value: { name: 'north.geojson', streets: 1, pieces: 1, found: 2, unused: 1 },
  });
  expect(await readdir(path.join(host.folder, 'received'), { recursive: true })).not.toContainEqual(
    expect.stringContaining('north'),
  );
  const next = await startTestHost({ dataFolder: host.folder });
  const later = next.screen('s');
  expect(await later.must('places.list', {})).toMatchObject([{ name: 'north.geojson', streets: 1 }]);
  const answers = await later.must('places.find', { addresses: ['51 Oak Street', 'nothing', '51 Elm St'] });
  expect(answers).toMatchObject([
    { kind: 'placed', confidence: 'good' },
    { kind: 'not-placed', code: 'no-number' },
    { kind: 'not-placed', code: 'no-street' },
  ]);
  await next.close();
});

test('the surest of several files answers; a file taken off answers no more', async () => {
  await load('one.geojson', [street('Oak Ave', 1, 99, 40)]);
  await load('two.geojson', [street('Oak St', 1, 99, 41)]);
  const [answer] = await screen.must('places.find', { addresses: ['51 Oak St'] });
  expect(answer).toMatchObject({ kind: 'placed', street: 'Oak St', confidence: 'good' });
  const two = (await screen.must('places.list', {})).find(({ name }) => name === 'two.geojson');
  await screen.must('places.forget', { streetsId: two?.id ?? 'none' });
  expect(await screen.must('places.find', { addresses: ['51 Oak St'] })).toMatchObject([
    { street: 'Oak Ave', confidence: 'fair' },
  ]);
});

test('the same file loaded again takes the place of the older one', async () => {
  await load('one.geojson', [street('Oak Ave', 1, 99, 40)]);
  await load('one.geojson', [street('Elm Ave', 1, 99, 40)]);
  expect(await screen.must('places.list', {})).toHaveLength(1);
  expect(await screen.must('places.find', { addresses: ['5 Oak Ave'] })).toMatchObject([{ kind: 'not-placed' }]);
});

test('a file that is no street file is refused, and a damaged kept one is left out', async () => {
  expect(await load('bad.geojson', [])).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
  await load('one.geojson', [street('Oak Ave', 1, 99, 40)]);
  const [kept = ''] = await readdir(path.join(host.folder, 'streets'));
  await writeFile(path.join(host.folder, 'streets', kept), '{"format":"swardway-streets"}');
  const next = await startTestHost({ dataFolder: host.folder });
  expect(await next.screen('s').must('places.list', {})).toEqual([]);
  await next.close();
});

test('a zipped Shapefile with the field names of county tables is a street file too', async () => {
  const columns = ['FULLNAME', 'LFROMADD', 'LTOADD'].map((name) => ({ name, type: 'C', bytes: 12 }));
  const rows = [
    ['Oak St', '1', '99'],
    ['Elm St', '', ''],
  ];
  const line = [
    [-83, 40],
    [-82.998, 40],
  ] as const;
  const bytes = archive({
    'roads.shp': shpFile([partsShape(3, [line]), partsShape(3, [line])]),
    'roads.dbf': dbfFile(columns, rows),
    'roads.prj': WGS84_PRJ,
  });
  const base64 = Buffer.from(bytes).toString('base64');
  const { token } = await screen.must('file.upload', { purpose: 'streets', name: 'roads.zip', base64 });
  expect(await screen.must('places.load', { token })).toMatchObject({ streets: 1, found: 2, unused: 1 });
  expect(await screen.must('places.find', { addresses: ['51 Oak St'] })).toMatchObject([
    { kind: 'placed', street: 'Oak St' },
  ]);
});
