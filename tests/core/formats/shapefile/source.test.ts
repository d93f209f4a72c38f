import { describe, expect, it } from 'vitest';
import { GROUND_READ_OPTIONS, type GroundReadOptions, shapefileReader } from '../../../../core/formats/index.ts';
import {
  archive,
  type Corner,
  dbfFile,
  nullShape,
  partsShape,
  patchShape,
  pointShape,
  pointsShape,
  shpFile,
  square,
  WGS84_PRJ,
} from './build.ts';

const reversed = (ring: readonly Corner[]): Corner[] => [...ring].reverse();

async function read(bytes: Uint8Array, options: Partial<GroundReadOptions> = {}, name = 'parcels.zip') {
  return shapefileReader.read(bytes, name, { ...GROUND_READ_OPTIONS, ...options });
}

async function source(bytes: Uint8Array, options: Partial<GroundReadOptions> = {}) {
  const read_ = await read(bytes, options);
  if (!read_.ok) throw new Error(`${read_.error.code} ${read_.error.detail}`);
  return read_.value;
}

async function geometries(...shapes: readonly Uint8Array[]) {
  const { layers } = await source(archive({ 'lots.shp': shpFile(shapes), 'lots.prj': WGS84_PRJ }));
  return layers[0]?.features.map((each) => each.geometry ?? each.issues[0]?.code) ?? [];
}

const TEXT = { name: 'NAME', type: 'C', bytes: 10 };

describe('outlines of a shapefile', () => {
  it('reads points, lines and rings, with heights and measures left out', async () => {
    const heights = new Uint8Array(16 + 8 * 5);
    const [ring, line] = [square(0, 0, 1), square(5, 5, 1).slice(0, 3)];
    expect(
      await geometries(
        pointShape([1, 2]),
        pointShape([3, 4], 11),
        pointsShape([
          [1, 2],
          [3, 4],
        ]),
        partsShape(3, [line]),
        partsShape(5, [ring]),
        partsShape(15, [ring], heights),
        partsShape(25, [ring], heights),
      ),
    ).toEqual([
      { type: 'Point', coordinates: [1, 2] },
      { type: 'Point', coordinates: [3, 4] },
      {
        type: 'MultiPoint',
        coordinates: [
          [1, 2],
          [3, 4],
        ],
      },
      { type: 'MultiLineString', coordinates: [line] },
      { type: 'Polygon', coordinates: [ring] },
      { type: 'Polygon', coordinates: [ring] },
      { type: 'Polygon', coordinates: [ring] },
    ]);
  });

  it('gives each hole to the smallest shell around it, whatever the order of the rings', async () => {
    const [yard, bed, island, apart] = [square(0, 0, 10), square(2, 2, 6), square(4, 4, 2), square(20, 0, 3)];
    const pond = square(4.5, 4.5, 1);
    const shape = partsShape(5, [reversed(pond), island, reversed(bed), apart, yard]);
    expect(await geometries(shape)).toEqual([
      { type: 'MultiPolygon', coordinates: [[island, reversed(pond)], [apart], [yard, reversed(bed)]] },
    ]);
  });

  it('takes a hole without a shell for a shell the wrong way round, and closes what is open', async () => {
    const [ring, other] = [square(0, 0, 1), square(3, 0, 1)];
    expect(
      await geometries(partsShape(5, [reversed(ring)]), partsShape(5, [ring.slice(0, 4), reversed(other)])),
    ).toEqual([
      { type: 'Polygon', coordinates: [reversed(ring)] },
      { type: 'MultiPolygon', coordinates: [[ring], [reversed(other)]] },
    ]);
  });

  it('reads the rings of a multipatch and refuses its triangles', async () => {
    const [yard, bed] = [square(0, 0, 10), square(2, 2, 6)];
    const rings = patchShape([
      { kind: 2, ring: yard },
      { kind: 3, ring: bed },
    ]);
    expect(await geometries(rings, patchShape([{ kind: 1, ring: yard }]))).toEqual([
      { type: 'Polygon', coordinates: [yard, bed] },
      'geometry-invalid',
    ]);
  });

  it('keeps null shapes and broken ones in their places, with the reason', async () => {
    const huge = partsShape(5, [square(0, 0, 1)]);
    new DataView(huge.buffer).setInt32(40, 2_000_000_000, true);
    const backwards = partsShape(5, [square(0, 0, 1), square(2, 2, 1)]);
    new DataView(backwards.buffer).setInt32(48, -4, true);
    const unknown = pointShape([0, 0], 77);
    const notNumbers = pointShape([Number.NaN, 0]);
    expect(await geometries(nullShape(), huge, backwards, unknown, notNumbers, pointShape([1, 2]))).toEqual([
      'geometry-missing',
      'geometry-invalid',
      'geometry-invalid',
      'geometry-invalid',
      'geometry-invalid',
      { type: 'Point', coordinates: [1, 2] },
    ]);
  });
});

describe('tables of a shapefile', () => {
  it('reads numbers, texts, yes and no, dates, and empty cells', async () => {
    const dbf = dbfFile(
      [
        TEXT,
        { name: 'COUNT', type: 'N', bytes: 6 },
        { name: 'SOLD', type: 'L', bytes: 1 },
        { name: 'ON', type: 'D', bytes: 8 },
      ],
      [
        ['Elm', '  12.5', 'T', '20240315'],
        ['', '******', '?', '        '],
      ],
    );
    const points = shpFile([pointShape([1, 2]), pointShape([3, 4])]);
    const { layers, issues } = await source(archive({ 'a.shp': points, 'a.dbf': dbf, 'a.prj': WGS84_PRJ }));
    expect(issues).toEqual([]);
    expect(layers[0]?.fields).toEqual(['NAME', 'COUNT', 'SOLD', 'ON']);
    expect(layers[0]?.features.map((each) => each.attributes)).toEqual([
      { NAME: 'Elm', COUNT: 12.5, SOLD: true, ON: '2024-03-15' },
      { NAME: null, COUNT: null, SOLD: null, ON: null },
    ]);
    expect(layers[0]?.features[1]?.where).toBe('parcels.zip, layer a, record 2');
  });

  it.each([
    ['UTF-8 by .cpg', 'UTF-8', 0, [0xc3, 0xa9], '\u00e9'],
    ['UTF-8 cut inside a letter', 'UTF-8', 0, [0x61, 0xc3], 'a'],
    ['windows-1250 by .cpg', '1250', 0, [0xec], '\u011b'],
    ['ISO-8859-2 by .cpg', 'ISO 8859-2', 0, [0xb1], '\u0105'],
    ['ISO-8859-1 by .cpg', '88591', 0, [0xe9], '\u00e9'],
    ['windows-1251 by its driver', null, 201, [0xc6], '\u0416'],
    ['windows-1252 by its driver', null, 0x57, [0x80], '\u20ac'],
    ['nothing said, UTF-8', null, 0, [0xc3, 0xa9], '\u00e9'],
  ])('reads letters in %s', async (_, cpg, driver, letters, expected) => {
    const dbf = dbfFile([{ ...TEXT, bytes: letters.length }], [[Uint8Array.from(letters)]], { driver });
    const files = { 'a.shp': shpFile([pointShape([1, 2])]), 'a.dbf': dbf, 'a.prj': WGS84_PRJ };
    const decode = (bytes: Uint8Array, encoding: string) => new TextDecoder(encoding).decode(bytes);
    const { layers, issues } = await source(archive(cpg === null ? files : { ...files, 'a.cpg': cpg }), { decode });
    expect(layers[0]?.features[0]?.attributes.NAME).toBe(expected);
    expect(issues).toEqual([]);
  });

  it('says when letters had to be guessed', async () => {
    const dbf = dbfFile([TEXT], [[Uint8Array.of(0xe9)]]);
    const { layers, issues } = await source(
      archive({ 'a.shp': shpFile([pointShape([1, 2])]), 'a.dbf': dbf, 'a.prj': WGS84_PRJ }),
    );
    expect(layers[0]?.features[0]?.attributes.NAME).toBe('\u00e9');
    expect(issues.map((each) => each.code)).toEqual(['encoding-assumed']);
  });

  it('keeps rows without a shape, shapes without a row and deleted rows, each with its reason', async () => {
    const shp = shpFile([pointShape([1, 2]), pointShape([3, 4])]);
    const three = dbfFile([TEXT], [['a'], ['b'], ['c']], { deleted: [1] });
    const long = await source(archive({ 'a.shp': shp, 'a.dbf': three, 'a.prj': WGS84_PRJ }));
    expect(
      long.layers[0]?.features.map((each) => [each.attributes.NAME, each.issues.map((issue) => issue.code)]),
    ).toEqual([
      ['a', []],
      ['b', ['record-deleted']],
      ['c', ['geometry-missing']],
    ]);
    const short = await source(archive({ 'a.shp': shp, 'a.dbf': dbfFile([TEXT], [['a']]), 'a.prj': WGS84_PRJ }));
    expect(short.layers[0]?.features[1]?.issues.map((each) => each.code)).toEqual(['attributes-missing']);
    expect(short.layers[0]?.features[1]?.geometry).not.toBeNull();
    const none = await source(archive({ 'a.shp': shp, 'a.prj': WGS84_PRJ }));
    expect(none.issues.map((each) => each.code)).toEqual(['attributes-missing']);
  });

  it('gives two fields of one name two names, and keeps a hostile name harmless', async () => {
    const dbf = dbfFile([TEXT, TEXT, { ...TEXT, name: '__proto__' }], [['a', 'b', 'c']]);
    const { layers } = await source(archive({ 'a.shp': shpFile([pointShape([1, 2])]), 'a.dbf': dbf }));
    expect(layers[0]?.fields).toEqual(['NAME', 'NAME 2', '__proto__']);
    const attributes = layers[0]?.features[0]?.attributes ?? {};
    expect(Object.entries(attributes)).toEqual([
      ['NAME', 'a'],
      ['NAME 2', 'b'],
      ['__proto__', 'c'],
    ]);
    expect(Object.getPrototypeOf(attributes)).toBe(Object.prototype);
  });
});

describe('archives with shapefiles', () => {
  it('reads each layer by its own .prj, whatever the letters and folders of its name', async () => {
    const mercator =
      'PROJCS["WGS_1984_Web_Mercator_Auxiliary_Sphere",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Mercator_Auxiliary_Sphere"],UNIT["Meter",1.0]]';
    const { layers } = await source(
      archive({
        'in/LOTS.SHP': shpFile([pointShape([0, 0])]),
        'in/lots.prj': mercator,
        'roads.shp': shpFile([pointShape([761556, 2960098])]),
        '__MACOSX/._roads.shp': 'junk',
      }),
    );
    expect(layers.map((each) => [each.name, each.coordinates.kind])).toEqual([
      ['LOTS', 'degrees'],
      ['roads', 'unknown'],
    ]);
    expect(layers[0]?.features[0]?.geometry).toEqual({ type: 'Point', coordinates: [0, expect.closeTo(0, 9)] });
    expect(layers[1]?.features[0]?.geometry).toEqual({ type: 'Point', coordinates: [761556, 2960098] });
    const [, roads] = layers;
    expect(roads?.coordinates.kind === 'unknown' && roads.coordinates.why).toContain('.prj');
  });

  it('tells of a file that breaks off and keeps what was before', async () => {
    const shp = shpFile([pointShape([1, 2]), pointShape([3, 4])]);
    const { layers, issues } = await source(archive({ 'a.shp': shp.subarray(0, shp.length - 5), 'a.prj': WGS84_PRJ }));
    expect(layers[0]?.features).toHaveLength(1);
    expect(issues.map((each) => each.code)).toContain('file-broken-off');
  });

  it.each([
    ['a .shp on its own', () => shpFile([]), 'format-unknown', '.dbf and .prj'],
    ['an archive without a .shp', () => archive({ 'readme.txt': 'x' }), 'format-invalid', '.shp'],
    [
      'an archive of archives',
      () => archive({ 'lots.zip': archive({ 'a.shp': shpFile([]) }) }),
      'format-unknown',
      'inside',
    ],
    ['a .shp that is none', () => archive({ 'a.shp': 'hello' }), 'format-invalid', 'again'],
    ['a table that is none', () => archive({ 'a.shp': shpFile([]), 'a.dbf': 'hello' }), 'format-invalid', 'again'],
  ])('refuses %s with a remedy', async (_, bytes, code, hint) => {
    const refused = await read(bytes());
    expect(refused).toMatchObject({ ok: false, error: { code } });
    expect(!refused.ok && refused.error.hint).toContain(hint);
  });

  it('keeps to the limits', async () => {
    const bytes = archive({ 'a.shp': shpFile([partsShape(5, [square(0, 0, 1)]), pointShape([1, 2])]) });
    const { limits } = GROUND_READ_OPTIONS;
    const read6 = await read(bytes, { limits: { ...limits, positions: 6 } });
    expect(read6.ok).toBe(true);
    const read5 = await read(bytes, { limits: { ...limits, positions: 5 } });
    expect(read5).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
    const small = await read(bytes, { limits: { ...limits, unpackedBytes: 100 } });
    expect(small).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
  });

  it('knows its files by their content', () => {
    const shp = shpFile([]);
    expect(shapefileReader.looksLike(archive({ 'x/a.SHP': shp }), 'a')).toBe(true);
    expect(shapefileReader.looksLike(shp, 'a')).toBe(true);
    expect(shapefileReader.looksLike(archive({ 'doc.kml': '<kml/>' }), 'a.zip')).toBe(false);
    expect(shapefileReader.looksLike(new Uint8Array([80, 75, 3, 4]), 'a.zip')).toBe(false);
  });
});
