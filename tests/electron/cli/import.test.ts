import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Property } from '../../../core/book/index.ts';
import { openStore } from '../../../electron/services/store/index.ts';
import { buildFirst, errorOf, here, jsonOf, readJsonFile, scratchFolder, smallSample } from './support.ts';

const scratch = scratchFolder();
const sample = smallSample('residential-day', scratch.at('residential-day.json'));
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

type Import = {
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  readonly added: readonly string[];
  readonly same: readonly string[];
  readonly changed: readonly string[];
  readonly counts: Readonly<Record<string, number>>;
  readonly records: readonly { readonly kind: string; readonly words: string }[];
  readonly leftOut: readonly string[];
  readonly properties: number;
  readonly matrixPlaces: number;
  readonly issues: readonly {
    readonly code: string;
    readonly severity: string;
    readonly where: string;
    readonly message: string;
  }[];
};
type Book = {
  readonly properties: readonly Property[];
  readonly matrix?: { readonly placeIds: readonly string[] };
};

const write = (name: string, text: string): string => {
  writeFileSync(scratch.at(name), text);
  return scratch.at(name);
};
const run = async (file: string, into: string, out: string, ...words: readonly string[]): Promise<Import> => {
  const done = await here(['import', file, '--into', into, '--out', out, ...words, '--json']);
  expect(done.code, done.remarks).toBe(0);
  const answer = jsonOf<Import>(done, 'import');
  expect(answer.accepted + answer.rejected).toBe(answer.found);
  return answer;
};

describe('lawns of a table', () => {
  const table = () =>
    write(
      'lawns.csv',
      [
        'id,name,lat,lon,area,gate width,slope',
        'n-1,Ash 1,40.031,-89.43,"12,500 sq ft",36 in,4',
        'n-2,Ash 2,40.032,-89.43,0.25 ac,,',
        'n-3,Ash 3,-89.43,40.032,5000,,',
        'n-4,Ash 4,40.033,-89.43,a lot,,',
        'n-2,Ash 5,40.034,-89.43,4000,,',
      ].join('\n'),
    );

  test('are added; every row is accounted for; the book given stays as it is', async () => {
    const before = readFileSync(sample);
    const out = scratch.at('more.json');
    const answer = await run(table(), sample, out);
    expect([answer.found, answer.accepted, answer.rejected]).toEqual([5, 2, 3]);
    expect(answer.added).toEqual(['n-1', 'n-2']);
    const rows = answer.issues.map((each) => /^lawns\.csv, row (\d+)$/.exec(each.where)?.[1]);
    expect(rows).toEqual(['4', '5', '6']);
    const book = readJsonFile<Book>(out);
    expect(book.properties).toHaveLength(10);
    expect(readFileSync(sample).equals(before)).toBe(true);
    const measured = await here(['measure', out, '--json']);
    const areas = jsonOf<{ properties: { id: string; treatableSqFt: number }[] }>(measured, 'measure').properties;
    expect(areas.find((each) => each.id === 'n-1')?.treatableSqFt).toBe(12_500);
    // 0.25 acres of 43,560 ft2 (NIST Handbook 44, appendix C).
    expect(areas.find((each) => each.id === 'n-2')?.treatableSqFt).toBeCloseTo(10_890, 9);
  });

  test('twice the same is the same; other content under a known id changes what the file speaks of', async () => {
    const first = scratch.at('first.json');
    const second = scratch.at('second.json');
    await run(table(), sample, first);
    expect(await run(table(), first, second)).toMatchObject({
      added: [],
      same: ['n-1', 'n-2'],
      changed: [],
      properties: 10,
    });
    expect(readFileSync(second, 'utf8')).toBe(readFileSync(first, 'utf8'));
    const other = write('other.csv', 'id,lat,lon,area\nn-1,40.031,-89.43,900\n');
    expect(await run(other, first, second)).toMatchObject({ added: [], same: [], changed: ['n-1'] });
    const after = readJsonFile<Book>(second).properties.find((each) => each.id === 'n-1');
    expect(after).toMatchObject({
      name: 'Ash 1',
      gates: [{ clearWidthIn: 36 }],
      zones: [{ slopeDeg: 4, shape: { areaSqFt: 900 } }],
      pastMeasures: [{ treatableSqFt: 12_500 }],
    });
  });

  test('one outline in a map grid among good ones is rejected with its place, as measure does', async () => {
    const square = (x: number, y: number, size: number) => [
      [
        [x, y],
        [x + size, y],
        [x + size, y + size],
        [x, y + size],
        [x, y],
      ],
    ];
    const outlines = [square(-83, 39.96, 0.0005), square(-83.01, 39.96, 0.0005), square(1_828_000, 712_000, 100)];
    const features = outlines.map((coordinates, index) => ({
      type: 'Feature',
      id: `lot-${index}`,
      properties: {},
      geometry: { type: 'Polygon', coordinates },
    }));
    const file = write('grid.geojson', JSON.stringify({ type: 'FeatureCollection', features }));
    const answer = await run(file, sample, scratch.at('grid.json'));
    expect([answer.found, answer.accepted, answer.rejected]).toEqual([3, 2, 1]);
    const errors = answer.issues.filter((each) => each.severity === 'error');
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({ code: 'geometry-not-lonlat', where: 'grid.geojson, features[2]' });
    expect(errors[0]?.message).toContain('Export again as longitude and latitude');
    const measured = jsonOf<{ properties: { treatableSqFt: number | null }[] }>(
      await here(['measure', file, '--json']),
      'measure',
    );
    expect(measured.properties.map((each) => each.treatableSqFt !== null)).toEqual([true, true, false]);
  });

  test('nothing usable: no book is written', async () => {
    const file = write('useless.csv', 'id,lat,lon,area\nx,0,0,5\n');
    const out = scratch.at('never.json');
    const error = errorOf(await here(['import', file, '--into', sample, '--out', out, '--json']), file);
    expect(error.code).toBe('format-invalid');
    expect(() => statSync(out)).toThrow();
  });

  test('a table without places, and a file of no known format', async () => {
    const out = scratch.at('never.json');
    const file = write('placeless.csv', 'id,area\nx,5000\n');
    expect(errorOf(await here(['import', file, '--into', sample, '--out', out, '--json']), file).code).toBe(
      'format-invalid',
    );
    const odd = write('odd.xyz', 'hello');
    expect(errorOf(await here(['import', odd, '--into', sample, '--out', out, '--json']), odd).code).toBe(
      'format-unknown',
    );
  });
});

describe('outlines of a county (invented)', () => {
  const ring = (west: number, south: number, size = 0.0003) =>
    [
      [west, south],
      [west + size, south],
      [west + size, south + size],
      [west, south + size],
      [west, south],
    ]
      .map((each) => `${each.join(',')},0`)
      .join(' ');
  const placemark = (shape: string, data: Readonly<Record<string, string>> = {}) =>
    `<Placemark><ExtendedData>${Object.entries(data)
      .map(([name, value]) => `<Data name="${name}"><value>${value}</value></Data>`)
      .join('')}</ExtendedData>${shape}</Placemark>`;
  const polygon = (...box: Parameters<typeof ring>) =>
    `<Polygon><outerBoundaryIs><LinearRing><coordinates>${ring(...box)}</coordinates></LinearRing></outerBoundaryIs></Polygon>`;
  const line = (...box: Parameters<typeof ring>) =>
    `<LineString><coordinates>${ring(...box)}</coordinates></LineString>`;
  const kml = () =>
    write(
      'county.kml',
      `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>
       <Folder><name>turf</name>
       ${placemark(polygon(-89.43, 40.03), { APN: '7-1', SITE: '7 Sorrel Way', OWNER: 'A. Body', gap: '91' })}
       ${placemark(polygon(-89.42, 40.03), { APN: '7-2', SITE: '9 Sorrel Way', OWNER: 'B. Body', gap: '' })}
       ${placemark(line(-89.41, 40.03), { APN: '7-3', SITE: '11 Sorrel Way', OWNER: 'C. Body', gap: '' })}
       </Folder><Folder><name>houses</name>
       ${placemark(polygon(-89.4299, 40.0301, 0.0001))}
       ${placemark(polygon(-89.3, 40.03, 0.0001))}
       </Folder></Document></kml>`,
    );
  const out = () => scratch.at('county.json');
  const words = ['--map', 'id=APN', '--map', 'address=SITE', '--map', 'gate-width=gap:cm'];

  test('are taken as told, without names of people, and every record is accounted for', async () => {
    const answer = await run(kml(), sample, out(), ...words);
    expect(answer.counts).toEqual({ new: 2, changed: 0, same: 0, part: 1, rejected: 2 });
    expect(answer.records.map((each) => each.kind)).toEqual(['new', 'new', 'rejected', 'part', 'rejected']);
    expect(answer.leftOut).toEqual(['OWNER']);
    expect(readFileSync(out(), 'utf8')).not.toContain('Body');
    const first = readJsonFile<Book>(out()).properties.find((each) => each.id === '7-1');
    expect(first).toMatchObject({ address: '7 Sorrel Way', exclusions: [{ what: 'other' }] });
    // 91 cm in inches of 2.54 cm.
    expect(first?.gates[0]?.clearWidthIn).toBeCloseTo(91 / 2.54, 9);
  });

  test('lines are closed, layers are chosen, people are taken, where that is asked for', async () => {
    expect((await run(kml(), sample, out(), ...words, '--close-lines')).added).toEqual(['7-1', '7-2', '7-3']);
    expect((await run(kml(), sample, out(), '--layer', 'houses=properties')).counts).toMatchObject({
      new: 2,
      rejected: 3,
    });
    expect((await run(kml(), sample, out(), '--map', 'name=OWNER')).leftOut).toEqual([]);
    expect(readFileSync(out(), 'utf8')).toContain('A. Body');
  });

  test('are merged by place under other ids', async () => {
    await run(kml(), sample, out(), ...words);
    const again = scratch.at('again.json');
    const renamed = write('renamed.kml', readFileSync(kml(), 'utf8').replaceAll('7-', 'new-'));
    expect(await run(renamed, out(), again, ...words, '--merge', 'place')).toMatchObject({
      added: [],
      same: ['7-1', '7-2'],
    });
    expect((await run(renamed, out(), again, ...words)).added).toEqual(['new-1', 'new-2']);
  });

  test('are measured as they would be imported', async () => {
    const measured = jsonOf<{ properties: unknown[]; issues: { code: string }[] }>(
      await here(['measure', kml(), '--json']),
      'measure',
    );
    expect(measured.properties).toHaveLength(2);
    expect(measured.issues.map((each) => each.code)).toContain('exclusion-without-property');
  });

  test('an unknown layer or field is told with those that are there; nonsense is a wrong command line', async () => {
    const refused = async (...more: readonly string[]) =>
      await here(['import', kml(), '--into', sample, '--out', out(), ...more]);
    for (const more of [
      ['--map', 'name=Nobody'],
      ['--layer', 'Nothing'],
    ]) {
      const done = await refused(...more, '--json');
      expect(done.code).toBe(1);
      expect(errorOf(done, kml()).code).toBe('reference-missing');
    }
    for (const more of [
      ['--map', 'colour=APN'],
      ['--map', 'name'],
      ['--merge', 'colour'],
      ['--crs', '2249'],
      ['--layer', 'turf=lawns'],
      ['--point', '1,2'],
      ['--point', '1,2=95,3', '--unit-m', '1'],
      ['--point', '1,2=40,-83'],
      ['--point', '1,2=40,-83', '--unit-m', '0'],
    ]) {
      expect((await refused(...more)).code, more.join(' ')).toBe(2);
    }
  }, 90_000);
});

test('a map grid without a name is placed by the code that is given', async () => {
  // The middle of zone 16 north is 87 degrees west; 500,000 m east is on it (EPSG dataset, UTM zones).
  const corner = (east: number, north: number) => [500_000 + east, 4_430_000 + north];
  const coordinates = [[corner(0, 0), corner(60, 0), corner(60, 40), corner(0, 40), corner(0, 0)]];
  const features = [{ type: 'Feature', id: 'u', properties: {}, geometry: { type: 'Polygon', coordinates } }];
  const file = write('grid.geojson', JSON.stringify({ type: 'FeatureCollection', features }));
  const out = scratch.at('grid.json');
  expect(errorOf(await here(['import', file, '--into', sample, '--out', out, '--json']), file).code).toBe(
    'format-invalid',
  );
  await run(file, sample, out, '--crs', 'EPSG:32616');
  const parking = readJsonFile<Book>(out).properties.find((each) => each.id === 'u')?.parking;
  expect(parking?.[0]).toBeCloseTo(-87, 2);
  expect(parking?.[1]).toBeCloseTo(40.02, 1);
  // A file that says what its coordinates are is not asked.
  const table = write('known.csv', 'id,lat,lon,area\nknown,40.03,-89.43,5000\n');
  await run(table, sample, out, '--crs', 'EPSG:32616');
  expect(readJsonFile<Book>(out).properties.find((each) => each.id === 'known')?.parking).toEqual([-89.43, 40.03]);
});

test('a drawing is placed by two points', async () => {
  const vertex = (x: number, y: number) => `10\n${x}\n20\n${y}\n`;
  const shape = `0\nLWPOLYLINE\n8\nturf\n90\n4\n70\n1\n${vertex(0, 0)}${vertex(50, 0)}${vertex(50, 20)}${vertex(0, 20)}`;
  const file = write('plan.dxf', `0\nSECTION\n2\nENTITIES\n${shape}0\nENDSEC\n0\nEOF\n`);
  const out = scratch.at('drawing.json');
  expect(errorOf(await here(['import', file, '--into', sample, '--out', out, '--json']), file).code).toBe(
    'format-invalid',
  );
  // 0.0005 degrees of latitude at 40 N are 55.52 m (111,035 m for a degree there); 50 units along them.
  await run(file, sample, out, '--point', '0,0=40,-89', '--point', '50,0=40.0005,-89');
  const measured = await here(['measure', out, '--json']);
  const areas = jsonOf<{ properties: { treatableSqFt: number }[] }>(measured, 'measure').properties;
  const unitM = (0.0005 * 111_035) / 50;
  expect((areas.at(-1)?.treatableSqFt ?? 0) / (1000 * (unitM / 0.3048) ** 2)).toBeCloseTo(1, 3);
});

test('addresses are placed by a street file, and marked so', async () => {
  const street = {
    type: 'Feature',
    properties: { FULLNAME: 'Sorrel Way', LFROMADD: 1, LTOADD: 99, RFROMADD: 2, RTOADD: 98 },
    geometry: {
      type: 'LineString',
      coordinates: [
        [-89.43, 40.03],
        [-89.42, 40.03],
      ],
    },
  };
  const streets = write('streets.geojson', JSON.stringify({ type: 'FeatureCollection', features: [street] }));
  const file = write('addresses.csv', 'id,address,area\ns-1,50 Sorrel Way,5000\ns-2,50 Nowhere Road,5000\n');
  const out = scratch.at('placed.json');
  const answer = await run(file, sample, out, '--streets', streets);
  expect(answer.counts).toMatchObject({ new: 1, rejected: 1 });
  const placed = readJsonFile<Book>(out).properties.find((each) => each.id === 's-1');
  expect(placed?.placedBy).toBe('address-range');
  expect(placed?.parking[0]).toBeCloseTo(-89.425, 3);
});

test('travel times are taken into the book, and plans use them', async () => {
  const file = write(
    'times.csv',
    'from,to,seconds,metres\nshop,teasel-lane-2,600,5000\nteasel-lane-2,shop,620,5100\nshop,mars,1,1\n',
  );
  const out = scratch.at('timed.json');
  const answer = await run(file, sample, out);
  expect(answer.matrixPlaces).toBe(3);
  expect(answer.issues.map((each) => each.code)).toContain('place-unknown');
  expect(readJsonFile<Book>(out).matrix?.placeIds).toContain('teasel-lane-2');
  const plan = await here(['plan', out, '--iterations', '2', '--json']);
  expect(jsonOf<{ travel: string }>(plan, 'plan').travel).toBe('mixed');
});

describe('a book file', () => {
  const stored = scratch.at('stored.swardway');
  const table = () => write('one.csv', 'id,lat,lon,area\nonly,40.031,-89.43,8000\n');

  test('is made, read by every command, and not changed by reading', async () => {
    await run(table(), sample, stored);
    const before = readFileSync(stored);
    expect(before.toString('latin1', 0, 15)).toBe('SQLite format 3');
    const json = scratch.at('same.json');
    await run(table(), sample, json);
    const plan = scratch.at('stored.plan.json');
    for (const words of [['measure'], ['reach'], ['demand'], ['plan', '--iterations', '5', '--out', plan]] as const) {
      const [command, ...rest] = words;
      const ofJson = await here([command, json, ...rest, '--json']);
      const ofStored = await here([command, stored, ...rest, '--json']);
      expect(ofStored.code).toBe(0);
      expect(JSON.parse(ofStored.out)).toEqual(JSON.parse(ofJson.out));
    }
    expect(jsonOf<{ feasible: boolean }>(await here(['judge', stored, plan, '--json']), 'judge').feasible).toBe(true);
    expect(readFileSync(stored).equals(before)).toBe(true);
  }, 60_000);

  test('is not overwritten by an import, and a newer one is refused untouched', async () => {
    const before = readFileSync(stored);
    const again = await here(['import', table(), '--into', sample, '--out', stored, '--json']);
    expect(errorOf(again, stored).code).toBe('not-allowed');
    expect(readFileSync(stored).equals(before)).toBe(true);
    const newer = Buffer.from(before);
    // user_version, a big-endian number at byte 60 ("Database File Format", section 1.3, sqlite.org/fileformat2.html).
    newer.writeInt32BE(900, 60);
    writeFileSync(scratch.at('newer.swardway'), newer);
    const refused = await here(['measure', scratch.at('newer.swardway'), '--json']);
    expect(errorOf(refused, 'newer.swardway').code).toBe('newer-version');
    expect(readFileSync(scratch.at('newer.swardway')).equals(newer)).toBe(true);
  });

  test('one that is open elsewhere is read as it is stored', async () => {
    const held = await openStore(stored);
    if (!held.ok) throw new Error(held.error.detail);
    try {
      expect((await here(['measure', stored])).code).toBe(0);
    } finally {
      await held.value.close();
    }
    expect((await here(['measure', stored])).code).toBe(0);
  }, 30_000);

  test('a damaged one is told', async () => {
    const bytes = Buffer.from(readFileSync(stored));
    bytes.fill(0x5a, 4096, bytes.length - 100);
    writeFileSync(scratch.at('damaged.swardway'), bytes);
    const error = errorOf(await here(['measure', scratch.at('damaged.swardway'), '--json']), 'damaged.swardway');
    expect(error.code).toBe('book-damaged');
    expect(readFileSync(scratch.at('damaged.swardway')).equals(bytes)).toBe(true);
  });
});
