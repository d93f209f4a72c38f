import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import {
  type GeoPackageCell,
  type GeoPackageContent,
  GROUND_READ_OPTIONS,
  geopackageReader,
} from '../../../../core/formats/index.ts';
import { projectionFromEpsg } from '../../../../core/geometry/index.ts';
import { type BlobOptions, blob, wkb } from './build.ts';

const WGS84 = {
  id: 4326,
  organization: 'EPSG',
  code: 4326,
  definition:
    'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]]',
};

function content(cells: readonly GeoPackageCell[], part: Partial<GeoPackageContent['tables'][number]> = {}) {
  const table = {
    name: 'lots',
    geometryColumn: 'geom',
    keyColumn: 'fid',
    systemId: 4326,
    columns: ['fid', 'geom', 'name', 'picture'],
    rows: cells.map((cell, index) => [index + 1, cell, `lot ${index + 1}`, Uint8Array.of(1, 2)]),
    ...part,
  };
  return { tables: [table], systems: [WGS84], issues: [] };
}

async function read(geopackage: GeoPackageContent | undefined) {
  const options = geopackage === undefined ? GROUND_READ_OPTIONS : { ...GROUND_READ_OPTIONS, geopackage };
  return geopackageReader.read(new Uint8Array(), 'county.gpkg', options);
}

async function layer(geopackage: GeoPackageContent) {
  const source = await read(geopackage);
  if (!source.ok) throw new Error(source.error.detail);
  const [first] = source.value.layers;
  if (first === undefined) throw new Error('no layer');
  return first;
}

async function one(cell: GeoPackageCell) {
  const [feature] = (await layer(content([cell]))).features;
  return feature?.geometry ?? feature?.issues[0]?.code;
}

const ring = [
  [-71.1, 42.3],
  [-71, 42.3],
  [-71, 42.4],
  [-71.1, 42.3],
];
const GEOMETRIES: readonly Geometry[] = [
  { type: 'Point', coordinates: [-71.1, 42.3] },
  { type: 'LineString', coordinates: ring },
  { type: 'Polygon', coordinates: [ring, ring] },
  { type: 'MultiPoint', coordinates: ring },
  { type: 'MultiLineString', coordinates: [ring, ring] },
  { type: 'MultiPolygon', coordinates: [[ring], [ring, ring]] },
  { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: [-71.1, 42.3] }] },
];
const VARIETIES: readonly BlobOptions[] = [
  {},
  { isLittle: false },
  { iso: 1000, envelope: 1 },
  { iso: 2000, envelope: 3 },
  { iso: 3000, envelope: 4, isLittle: false },
];

describe('GeoPackage geometries', () => {
  it.each(GEOMETRIES)(
    'reads $type in either order of bytes, with any envelope, without heights and measures',
    async (geometry) => {
      for (const options of VARIETIES) expect(await one(blob(geometry, options))).toEqual(geometry);
    },
  );

  it('reads the marks of the older variety', async () => {
    const plain = wkb({ type: 'Point', coordinates: [-71.1, 42.3] });
    const marked = [...plain.slice(0, 4), 0x20, 0xe6, 0x10, 0, 0, ...plain.slice(5)];
    expect(await one(blob(marked))).toEqual({ type: 'Point', coordinates: [-71.1, 42.3] });
  });

  it('takes the empty flag, an empty point and no cell at all for a record without an outline', async () => {
    expect(await one(blob({ type: 'Point', coordinates: [1, 2] }, { flags: 0x10 }))).toBe('geometry-missing');
    expect(await one(blob({ type: 'Point', coordinates: [Number.NaN, Number.NaN] }))).toBe('geometry-missing');
    expect(await one(blob({ type: 'MultiPolygon', coordinates: [] }))).toBe('geometry-missing');
    expect(await one(null)).toBe('geometry-missing');
  });

  it.each<[string, GeoPackageCell]>([
    ['a curve', blob([1, 10, 0, 0, 0, 0, 0, 0, 0])],
    ['an extension', blob({ type: 'Point', coordinates: [1, 2] }, { flags: 0x20 })],
    ['an unknown envelope', blob({ type: 'Point', coordinates: [1, 2] }, { flags: 0x0c })],
    ['too few bytes', blob(wkb({ type: 'LineString', coordinates: ring }).slice(0, 30))],
    ['a giant count', blob([1, 2, 0, 0, 0, 255, 255, 255, 255])],
    ['a giant count of parts', blob([1, 7, 0, 0, 0, 255, 255, 255, 15])],
    ['an odd part', blob([1, 6, 0, 0, 0, 1, 0, 0, 0, ...wkb({ type: 'Point', coordinates: [1, 2] })])],
    ['half a point', blob({ type: 'Point', coordinates: [1, Number.NaN] })],
    ['another kind of blob', Uint8Array.of(1, 2, 3)],
    ['a text', 'POINT (1 2)'],
  ])('refuses %s, and only that record', async (_, cell) => {
    const { features } = await layer(content([cell, blob({ type: 'Point', coordinates: [-71.1, 42.3] })]));
    expect(features.map((each) => each.issues.map((issue) => issue.code))).toEqual([['geometry-invalid'], []]);
  });

  it('refuses collections nested without end', async () => {
    let nested: readonly number[] = wkb({ type: 'Point', coordinates: [1, 2] });
    for (let depth = 0; depth < 5000; depth += 1) nested = [1, 7, 0, 0, 0, 1, 0, 0, 0, ...nested];
    expect(await one(blob(nested))).toBe('geometry-invalid');
  });
});

describe('GeoPackage tables', () => {
  it('keeps names and numbers, and leaves bytes out', async () => {
    const { name, fields, features } = await layer(content([blob({ type: 'Point', coordinates: [-71.1, 42.3] })]));
    expect([name, fields]).toEqual(['lots', ['name', 'picture']]);
    expect(features[0]).toMatchObject({
      id: '1',
      where: 'county.gpkg, layer lots, record 1',
      attributes: { name: 'lot 1', picture: null },
    });
  });

  it('turns a system by its text, else by its EPSG code', async () => {
    const projected = projectionFromEpsg(2249);
    if (projected.kind === 'unknown') throw new Error(projected.why);
    const corner = projected.projection.fromDegrees([-71.1, 42.3]) ?? [0, 0];
    const given = content([blob({ type: 'Point', coordinates: [...corner] })], { systemId: 9 });
    const system = { id: 9, organization: 'epsg', code: 2249, definition: 'undefined' };
    const turned = await layer({ ...given, systems: [system] });
    expect(turned.coordinates.kind).toBe('degrees');
    expect(turned.features[0]?.geometry).toEqual({
      type: 'Point',
      coordinates: [expect.closeTo(-71.1, 9), expect.closeTo(42.3, 9)],
    });
  });

  it.each([0, -1, 77])('does not take system %i for degrees', async (systemId) => {
    const { coordinates } = await layer(content([blob({ type: 'Point', coordinates: [1, 2] })], { systemId }));
    expect(coordinates.kind).toBe('unknown');
    expect(coordinates.kind === 'unknown' && coordinates.why).toContain('EPSG');
  });

  it('gives an error to a record outside what its system can show', async () => {
    const { features } = await layer(content([blob({ type: 'Point', coordinates: [200, 2] })]));
    expect(features[0]?.issues.map((each) => each.code)).toEqual(['coordinates-off-map']);
  });

  it('says so where no host opened it, or nothing is in it', async () => {
    expect(await read(undefined)).toMatchObject({ ok: false, error: { code: 'not-available' } });
    expect(await read({ tables: [], systems: [], issues: [] })).toMatchObject({
      ok: false,
      error: { code: 'format-invalid' },
    });
  });

  it('knows its files: a database that says so, or is called so', () => {
    const database = new Uint8Array(100);
    database.set(new TextEncoder().encode('SQLite format 3\0'));
    expect(geopackageReader.looksLike(database, 'a.db')).toBe(false);
    expect(geopackageReader.looksLike(database, 'a.GPKG')).toBe(true);
    database.set(new TextEncoder().encode('GPKG'), 68);
    expect(geopackageReader.looksLike(database, 'a.db')).toBe(true);
    expect(geopackageReader.looksLike(new Uint8Array(), 'a.gpkg')).toBe(false);
  });
});
