import { describe, expect, it } from 'vitest';
import { csvReader } from '../../../../core/formats/csv/index.ts';
import { findGroundReader, type SourceFeature, type SourceLayer } from '../../../../core/formats/index.ts';
import { readGround, refuseGround } from '../../../support/ground.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);

async function layerOf(text: string): Promise<SourceLayer> {
  const [layer] = (await readGround(csvReader, utf8(text), 'list.csv')).layers;
  if (layer === undefined) throw new Error('no layer');
  return layer;
}

async function firstOf(text: string): Promise<SourceFeature> {
  const [feature] = (await layerOf(text)).features;
  if (feature === undefined) throw new Error('no record');
  return feature;
}

const outlineOf = (wkt: string) => firstOf(`id,wkt\na,"${wkt}"\n`);
const SQUARE = 'POLYGON((-83 40,-82.999 40,-82.999 40.001,-83 40.001,-83 40))';
const RING = [
  [-83, 40],
  [-82.999, 40],
  [-82.999, 40.001],
  [-83, 40.001],
  [-83, 40],
];
const POLYGON = { type: 'Polygon', coordinates: [RING] };

describe('a table with outlines', () => {
  it.each([
    ['plain', SQUARE],
    ['with blanks', 'polygon ( ( -83  40 , -82.999 40,\n-82.999 40.001 , -83 40.001,-83 40 ) )'],
    ['with heights', 'POLYGON Z((-83 40 1,-82.999 40 1,-82.999 40.001 1,-83 40.001 1,-83 40 1))'],
    ['with its type and Z in one word', 'POLYGONZ((-83 40 1,-82.999 40 1,-82.999 40.001 1,-83 40.001 1,-83 40 1))'],
    ['with its system', `SRID=4326;${SQUARE}`],
    ['with exponents', 'POLYGON((-83 4e1,-82.999 40.,-82.999 40.001,-830e-1 40.001,-83 40))'],
  ])('reads a polygon %s', async (_, wkt) => {
    expect(await outlineOf(wkt)).toMatchObject({ geometry: POLYGON, issues: [], attributes: { id: 'a' } });
  });

  it.each([
    ['MULTIPOLYGON(((-83 40,-82 40,-82 41,-83 40)),((-81 40,-80 40,-80 41,-81 40)))', 'MultiPolygon'],
    ['MULTIPOINT((-83 40),(-82 40))', 'MultiPoint'],
    ['MULTIPOINT(-83 40,-82 40)', 'MultiPoint'],
    ['LINESTRING(-83 40,-82 40)', 'LineString'],
    ['GEOMETRYCOLLECTION(POINT(-83 40),LINESTRING(-83 40,-82 40))', 'GeometryCollection'],
  ])('reads %s', async (wkt, type) => expect((await outlineOf(wkt)).geometry?.type).toBe(type));

  it('puts outlines together that the delimiter has cut', async () => {
    const semicolons = `id;wkt;name\na;SRID=4326;${SQUARE};Oak\n`;
    expect(await firstOf(semicolons)).toMatchObject({ geometry: POLYGON, attributes: { id: 'a', name: 'Oak' } });
    const commas = `id,wkt,name\na,${SQUARE},Oak\n`;
    expect(await firstOf(commas)).toMatchObject({ geometry: POLYGON, attributes: { id: 'a', name: 'Oak' } });
  });

  it('turns outlines of a named grid into degrees, and rejects those of an unknown one', async () => {
    const mercator = await outlineOf('SRID=3857;POINT(-9239517.7339 4865942.2795)');
    const [longitude, latitude] = mercator.geometry?.type === 'Point' ? mercator.geometry.coordinates : [];
    // The spherical formulas of web mercator: x = R lambda, y = R ln tan(pi/4 + phi/2), R = 6378137 m.
    expect(longitude).toBeCloseTo(((-9239517.7339 / 6378137) * 180) / Math.PI, 9);
    expect(latitude).toBeCloseTo(((2 * Math.atan(Math.exp(4865942.2795 / 6378137)) - Math.PI / 2) * 180) / Math.PI, 9);
    expect(await outlineOf('SRID=9999;POINT(1 2)')).toMatchObject({
      geometry: null,
      issues: [{ code: 'coordinates-off-map' }],
    });
  });

  it.each([
    ['POLYGON EMPTY', 'an empty POLYGON'],
    ['CURVEPOLYGON(CIRCULARSTRING(0 0,1 1,2 0,0 0))', 'a CURVEPOLYGON, which is not read'],
    ['POLYGON((-83 40,-82 40,-83 40))', 'a ring of fewer than three corners'],
    ['POLYGON((-83 40,-82 x,-82 41,-83 40))', 'numbers or commas'],
    ['POLYGON((-83 40,-82 NaN,-82 41,-83 40))', 'numbers or commas'],
    ['POLYGON((-83 40,-82 40,-82 41,-83 40)', 'a bracket that is not closed'],
    ['POLYGON((-83 40,-82 40,-82 41,-83 40)) x', 'something after its last bracket'],
    ['POINT(1e400 40)', 'a corner that is not a pair of numbers'],
    [`GEOMETRYCOLLECTION${'('.repeat(5000)}${')'.repeat(5000)}`, 'more brackets'],
  ])('rejects %s with its reason', async (wkt, reason) => {
    const feature = await outlineOf(wkt);
    expect(feature.geometry).toBeNull();
    expect(feature.issues.map((each) => each.severity)).toEqual(['error']);
    expect(feature.issues[0]?.message).toContain(reason);
  });

  it('keeps numbers of an unknown grid as they are, and says so', async () => {
    const layer = await layerOf('id,wkt\na,"POINT(760000 2950000)"\n');
    expect(layer.coordinates.kind).toBe('unknown');
    expect(layer.features[0]?.geometry).toEqual({ type: 'Point', coordinates: [760000, 2950000] });
  });
});

describe('a table with places', () => {
  it.each([
    ['commas and quotation marks', 'lat,lon,name\n40.01,-83.02,"Oak, rear"\n'],
    ['semicolons and decimal commas', 'lat;lon;name\n40,01;-83,02;Oak, rear\n'],
    ['tabs', 'lat\tlon\tname\r\n40.01\t-83.02\tOak, rear\r\n'],
    ['a byte order mark', '\ufefflat,lon,name\n40.01,-83.02,"Oak, rear"\n'],
    ['other names', 'Latitude,Longitude (deg),name\n40.01\u00b0,\u221283.02,"Oak, rear"\n'],
    ['x and y', 'x,y,name\n-83.02,40.01,"Oak, rear"\n'],
  ])('reads %s', async (_, text) => {
    expect(await firstOf(text)).toMatchObject({
      geometry: { type: 'Point', coordinates: [-83.02, 40.01] },
      attributes: { name: 'Oak, rear' },
      issues: [],
    });
  });

  it('exchanges columns that are swapped throughout, and says so', async () => {
    const source = await readGround(csvReader, utf8('lat,lon\n-83.02,40.01\n-83.03,40.02\n'), 'list.csv');
    expect(source.layers[0]?.features.map((each) => each.geometry)).toEqual([
      { type: 'Point', coordinates: [-83.02, 40.01] },
      { type: 'Point', coordinates: [-83.03, 40.02] },
    ]);
    expect(source.issues).toMatchObject([{ code: 'coordinates-exchanged', severity: 'warning' }]);
  });

  it('rejects a single row that is swapped or makes no sense', async () => {
    const { features } = await layerOf('lat,lon\n40.01,-83.02\n-83.02,40.01\n400,500\nx,-83\n,-83\n0,0\n');
    expect(features.map((each) => [each.geometry === null, each.issues.map((issue) => issue.code)])).toEqual([
      [false, []],
      [true, ['geometry-not-lonlat']],
      [true, ['geometry-not-lonlat']],
      [true, ['place-unreadable']],
      [true, ['place-unreadable']],
      [true, ['place-unreadable']],
    ]);
    expect(features[1]?.issues[0]?.message).toContain('swapped');
    expect(features[3]?.where).toBe('list.csv, row 5');
  });
});

describe('a table without places', () => {
  it('gives records of areas and addresses, none of them faulty', async () => {
    const layer = await layerOf(
      'id,address,Lawn area (sq ft),id\n007,"12 Elm Court","12,500",x\n008,9 Oak Row,1/2 ac,\n',
    );
    expect(layer.fields).toEqual(['id', 'address', 'Lawn area (sq ft)', 'id (2)']);
    expect(layer.features).toMatchObject([
      {
        geometry: null,
        issues: [],
        attributes: { id: '007', address: '12 Elm Court', 'Lawn area (sq ft)': '12,500', 'id (2)': 'x' },
      },
      { geometry: null, issues: [], attributes: { id: '008', 'Lawn area (sq ft)': '1/2 ac', 'id (2)': null } },
    ]);
  });

  it('rejects rows that cannot be read, and passes over blank ones', async () => {
    const { features } = await layerOf('id,address\na,12 Elm Court, rear\n\nb,"open\n');
    expect(features.map((each) => [each.where, each.issues.map((issue) => issue.code)])).toEqual([
      ['list.csv, row 2', ['row-malformed']],
      ['list.csv, row 4', ['row-malformed']],
    ]);
  });

  it('says what it took the letters for', async () => {
    const latin = Uint8Array.from('address\nGr\u00fcn\n', (character) => character.charCodeAt(0));
    const source = await readGround(csvReader, latin, 'list.csv');
    expect(source.layers[0]?.features[0]?.attributes).toEqual({ address: 'Gr\u00fcn' });
    expect(source.issues).toMatchObject([{ code: 'encoding-assumed' }]);
    expect((await readGround(csvReader, utf8('address\n'), 'a.csv')).issues).toMatchObject([{ code: 'file-empty' }]);
    expect(await refuseGround(csvReader, utf8('\n\n'), 'a.csv')).toMatchObject({
      code: 'format-invalid',
      where: 'a.csv',
    });
    expect(await refuseGround(csvReader, utf8('a\0b'), 'a.csv')).toMatchObject({
      code: 'format-invalid',
      where: 'a.csv',
    });
  });

  it('is known by its columns or its ending, but not where it holds travel times', () => {
    const idOf = (text: string, name: string) => {
      const reader = findGroundReader(utf8(text), name);
      return reader.ok ? reader.value.id : reader.error.code;
    };
    expect(idOf('id,address\na,b\n', 'download')).toBe('csv');
    expect(idOf('plain\na\n', 'list.csv')).toBe('csv');
    expect(csvReader.looksLike(utf8('from,to,seconds,address\na,b,5,c\n'), 'times.csv')).toBe(false);
    expect(idOf('GIF89a', 'photo.gif')).toBe('format-unknown');
  });
});
