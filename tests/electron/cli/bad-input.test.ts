import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  buildFirst,
  changedSample,
  errorOf,
  here,
  jsonOf,
  limited,
  readJsonFile,
  scratchFolder,
  smallSample,
} from './support.ts';

const scratch = scratchFolder();
const sample = smallSample('residential-day', scratch.at('residential-day.json'));
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

const write = (name: string, text: string | Uint8Array): string => {
  writeFileSync(scratch.at(name), text);
  return scratch.at(name);
};
const planError = async (file: string) => errorOf(await here(['plan', file, '--iterations', '3', '--json']), file);

describe('books that cannot be read', () => {
  test('not JSON: line and column', async () => {
    const file = write('cut.json', '{\n "format": "swardway-book",\n "version": 1,\n');
    const error = await planError(file);
    expect(error.code).toBe('not-json');
    expect(error.where).toMatch(/line 4, column 1/);
  });

  test('empty, not text, a folder, nothing at all', async () => {
    expect((await planError(write('empty.json', ''))).code).toBe('not-json');
    expect((await planError(write('bytes.json', new Uint8Array([0x80, 0xff, 0xfe, 0x00])))).code).toBe(
      'format-invalid',
    );
    mkdirSync(scratch.at('folder.json'));
    expect((await planError(scratch.at('folder.json'))).code).toBe('file-not-readable');
    expect((await planError(scratch.at('missing.json'))).code).toBe('file-not-found');
  });

  test('another kind of JSON', async () => {
    const file = write('other.json', '{"type":"FeatureCollection","features":[]}');
    expect((await planError(file)).code).toBe('not-a-book');
    expect(errorOf(await here(['judge', sample, file, '--json']), file).code).toBe('not-a-plan');
  });

  test('a newer version: refused, bytes untouched', async () => {
    const file = changedSample('residential-day', scratch.at('newer.json'), (book) => {
      Object.assign(book, { version: 2, somethingNew: true });
    });
    const before = readFileSync(file);
    expect((await planError(file)).code).toBe('newer-version');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test.each([
    [
      'a width in words',
      /machines\[0\]\.transitWidthIn/,
      (book: never) => set(book, 'machines', 0, { transitWidthIn: 'wide' }),
    ],
    ['a negative payload', /rigs\[0\]\.payloadLb/, (book: never) => set(book, 'rigs', 0, { payloadLb: -3 })],
    ['a shift of nothing', /rigs\[0\]\.shiftMin/, (book: never) => set(book, 'rigs', 0, { shiftMin: 0 })],
    ['no zones at all', /properties\[2\]\.zones/, (book: never) => set(book, 'properties', 2, { zones: undefined })],
    ['latitude 95', /properties\[0\]\.parking/, (book: never) => set(book, 'properties', 0, { parking: [-89, 95] })],
  ] as const)('%s: the path of the field', async (_, path, change) => {
    const file = changedSample('residential-day', scratch.at('schema.json'), (book) => change(book as never));
    const error = await planError(file);
    expect(error.code).toBe('wrong-schema');
    expect(error.where).toMatch(path);
  });

  test('ids that are there twice', async () => {
    const file = changedSample('residential-day', scratch.at('twice.json'), (book) => {
      const list = (book as unknown as { properties: unknown[] }).properties;
      list.push(list[0]);
    });
    expect((await planError(file)).code).toBe('book-invalid');
  });

  test('a book that may not be read', async (context) => {
    if (process.getuid?.() === 0) context.skip('the superuser may read every file');
    const file = write('closed.json', readFileSync(sample));
    chmodSync(file, 0o000);
    expect((await planError(file)).code).toBe('file-not-readable');
  });
});

function set(book: never, list: string, index: number, change: object): void {
  const records = (book as Record<string, object[]>)[list] ?? [];
  Object.assign(records[index] ?? {}, change);
}

describe('rounds that cannot be planned', () => {
  test('nothing to do, and no such round, rig or day', async () => {
    const nothing = changedSample('residential-day', scratch.at('nothing.json'), (book) => {
      set(book as never, 'rounds', 0, { propertyIds: [] });
    });
    expect((await planError(nothing)).code).toBe('nothing-to-do');
    expect(errorOf(await here(['demand', nothing, '--json']), nothing).code).toBe('nothing-to-do');
    const none = changedSample('residential-day', scratch.at('none.json'), (book) => {
      Object.assign(book, { rounds: [] });
    });
    expect((await planError(none)).code).toBe('reference-missing');
    for (const words of [
      ['plan', sample, '--round', 'autumn'],
      ['plan', sample, '--date', '2027-04-01'],
      ['reach', sample, '--rig', 'rig-west'],
    ]) {
      const error = errorOf(await here([...words, '--json']), sample);
      expect(error.code).toBe('reference-missing');
      expect(error.hint).toMatch(/spring|2027-03-16|rig-north/);
    }
  });

  test('a day that no calendar has: no plan of it, and no verdict on one', async () => {
    const plan = scratch.at('good-plan.json');
    expect((await here(['plan', sample, '--iterations', '3', '--out', plan])).code).toBe(0);
    const file = changedSample('residential-day', scratch.at('february.json'), (book) => {
      set(book as never, 'rounds', 0, { dates: ['2027-02-30'] });
    });
    for (const error of [await planError(file), errorOf(await here(['judge', file, plan, '--json']), file)]) {
      expect(error.code).toBe('quantity-out-of-range');
      expect(error.where).toMatch(/february\.json.*, round Spring pre-emergent, dates\[0\]$/);
      expect(error.detail).toContain('2027-02-30');
      expect(error.hint).toMatch(/another day/);
    }
  });

  test('a gate narrower than every machine and a hose too short: no plan possible, with every reason', async () => {
    const file = changedSample('residential-day', scratch.at('narrow.json'), (book) => {
      const { properties, handMethods } = book as unknown as {
        properties: { gates: unknown[]; zones: { gateIds: string[] }[] }[];
        handMethods: { reachFt?: number }[];
      };
      for (const property of properties) {
        property.gates = [{ id: 'only', name: 'only gate', clearWidthIn: 20 }];
        for (const zone of property.zones) zone.gateIds = ['only'];
      }
      for (const hand of handMethods) hand.reachFt = 5;
    });
    const out = scratch.at('no-plan.json');
    const run = await here(['plan', file, '--iterations', '3', '--json', '--out', out]);
    expect(run.code).toBe(3);
    const plan = jsonOf<{ days: unknown[]; unplaced: { reasons: { words: string }[] }[] }>(run, 'plan');
    expect(plan.days).toEqual([]);
    expect(plan.unplaced).toHaveLength(56);
    for (const { reasons } of plan.unplaced) {
      expect(reasons).toHaveLength(1);
      expect(reasons[0]?.words).toMatch(/gate 20 in, machine 35 in.*hose 5 ft/);
    }
    expect(run.remarks).toContain('no-plan-possible');
    expect(readJsonFile(out)).toEqual(plan);
    const people = await here(['plan', file, '--iterations', '3']);
    expect(people.code).toBe(3);
    expect(people.out).toContain('Not placed: 56');
  });

  test('a tank smaller than what a hand gun needs is told, and nothing goes to that gun', async () => {
    const file = changedSample('residential-day', scratch.at('gun.json'), (book) => {
      const { handMethods } = book as unknown as { handMethods: { what: string; leastVolumeGal: number }[] };
      for (const hand of handMethods) if (hand.what === 'hose') hand.leastVolumeGal = 900;
    });
    const run = await here(['plan', file, '--iterations', '3', '--json']);
    expect(run.code).toBe(0);
    expect(run.remarks).toMatch(/gun\.json.*at least 900 gal.*\[vessel-unusable\]/);
    const plan = jsonOf<{ unplaced: { reasons: { words: string }[] }[] }>(run, 'plan');
    expect(plan.unplaced.length).toBeGreaterThan(0);
    for (const { reasons } of plan.unplaced) expect(reasons[0]?.words).toMatch(/900 gal/);
  });

  test('a rate above the label is refused', async () => {
    const file = changedSample('residential-day', scratch.at('label.json'), (book) => {
      const { products } = book as unknown as { products: { label: object }[] };
      for (const product of products) product.label = { mostPerApplication: 1e-6 };
    });
    const error = await planError(file);
    expect(error.code).toBe('label-limit-broken');
    expect(error.detail).toMatch(/allowed in an application/);
  });
});

const LOT: readonly (readonly [number, number])[] = [
  [-83.0, 39.96],
  [-82.9995, 39.96],
  [-82.9995, 39.9604],
  [-83.0, 39.9604],
  [-83.0, 39.96],
];
const feature = (id: string, ring: readonly (readonly number[])[]) => ({
  type: 'Feature',
  id,
  properties: {},
  geometry: { type: 'Polygon', coordinates: [ring] },
});
const collection = (name: string, features: readonly object[]): string =>
  write(name, JSON.stringify({ type: 'FeatureCollection', features }));

type Measured = {
  readonly properties: readonly {
    readonly id: string;
    readonly treatableSqFt: number | null;
    readonly zones: readonly { plannable: boolean }[];
  }[];
  readonly totalSqFt: number;
  readonly issues: readonly { readonly code: string; readonly severity: string; readonly where: string }[];
  readonly error?: { readonly code: string };
};

describe('outlines with faults', () => {
  const [a, b, c, d] = LOT;
  if (!a || !b || !c || !d) throw new Error('the lot has four corners');
  const cases: readonly (readonly [string, readonly (readonly number[])[], string, boolean])[] = [
    ['crossing', [a, c, b, d, a], 'geometry-self-crossing', true],
    ['unclosed', [a, b, c, d], 'geometry-not-closed', true],
    ['flat', [a, b, a, b, a], 'geometry-zero-width', false],
    ['swapped', LOT.map(([longitude, latitude]) => [latitude, longitude * 1.2]), 'geometry-not-lonlat', false],
    [
      'projected',
      LOT.map((_, index) => [1828000 + index * 10, 712000 + (index % 2) * 10]),
      'geometry-not-lonlat',
      false,
    ],
  ];

  test.each(cases)('%s: told with its place, the others measured', async (id, ring, code, hasArea) => {
    const file = collection(`${id}.geojson`, [feature('good', LOT), feature(id, ring)]);
    const run = await here(['measure', file, '--json']);
    expect(run.code).toBe(0);
    const measured = jsonOf<Measured>(run, 'measure');
    expect(measured.properties.map((each) => each.id)).toEqual(['good', id]);
    const odd = measured.issues.find((each) => each.code === code);
    expect(odd?.where).toContain(`${id}.geojson`);
    expect(odd?.where).toContain(`(id ${id})`);
    const area = measured.properties[1]?.treatableSqFt ?? null;
    expect(area !== null).toBe(hasArea);
    if (code === 'geometry-self-crossing') expect(measured.properties[1]?.zones[0]?.plannable).toBe(false);
    const good = measured.properties[0]?.treatableSqFt ?? 0;
    expect(measured.totalSqFt).toBeCloseTo(good + (area ?? 0), 6);
  });

  test('the same outline twice is told', async () => {
    const file = collection('twice.geojson', [feature('one', LOT), feature('two', LOT)]);
    const measured = jsonOf<Measured>(await here(['measure', file, '--json']), 'measure');
    expect(measured.issues.map((each) => each.code)).toContain('duplicate-outline');
  });

  test('exit code 1 only where none could be measured, with answer and error in one object', async () => {
    const file = collection('all-bad.geojson', [feature('flat', [a, b, a, b, a])]);
    const run = await here(['measure', file, '--json']);
    expect(run.code).toBe(1);
    const measured = jsonOf<Measured>(run, 'measure');
    expect(measured.properties[0]?.treatableSqFt).toBeNull();
    expect(measured.error?.code).toBe('geometry-invalid');
    expect(run.remarks).toContain('all-bad.geojson');
    expect((await here(['measure', collection('nothing.geojson', [])])).code).toBe(1);
  });
});

describe('output files', () => {
  test('a folder that is missing is told and never made', async () => {
    const plan = scratch.at('for-folders.plan.json');
    expect((await here(['plan', sample, '--iterations', '3', '--out', plan])).code).toBe(0);
    const lots = write('for-folders.csv', 'id,lat,lon,area\na,40.03,-89.44,5000\n');
    const missing = scratch.at('nowhere');
    for (const words of [
      ['plan', sample, '--iterations', '3', '--out', `${missing}/p.json`],
      ['report', sample, plan, '--html', `${missing}/p.html`],
      ['report', sample, plan, '--pdf', `${missing}/p.pdf`],
      ['export', sample, '--as', 'geojson', '--out', `${missing}/p.geojson`],
      ['import', lots, '--into', sample, '--out', `${missing}/p.json`],
      ['import', lots, '--into', sample, '--out', `${missing}/p.swardway`],
    ]) {
      const error = errorOf(await here([...words, '--json']), words.at(-1) ?? '');
      expect(error.code).toBe('file-not-found');
      expect(error.detail).toContain('nowhere');
      expect(existsSync(missing)).toBe(false);
    }
  }, 60_000);

  test('a book is never overwritten by a slip of the pen', async () => {
    const book = write('kept.json', readFileSync(sample));
    const plan = scratch.at('kept.plan.json');
    expect((await here(['plan', book, '--iterations', '3', '--out', plan])).code).toBe(0);
    for (const words of [
      ['plan', book, '--out', book],
      ['report', book, plan, '--html', book],
      ['report', book, plan, '--html', plan],
      ['report', book, plan, '--pdf', plan],
      ['import', write('one.csv', 'id,lat,lon,area\na,40.03,-89.44,5000\n'), '--into', book, '--out', plan],
    ]) {
      const named = words.at(-1) ?? '';
      const before = readFileSync(named);
      expect(errorOf(await here([...words, '--json']), named).code).toBe('not-allowed');
      expect(readFileSync(named).equals(before)).toBe(true);
    }
    // A plan over a plan is what --out is for.
    expect((await here(['plan', book, '--iterations', '3', '--out', plan])).code).toBe(0);
  }, 60_000);

  test('no room for the file: told, the old one is unchanged and nothing is left behind', async (context) => {
    if (process.platform === 'win32') context.skip('the limit on file sizes is set by a POSIX shell');
    const folder = scratch.at('small');
    mkdirSync(folder);
    const out = `${folder}/plan.json`;
    expect((await here(['plan', sample, '--iterations', '3', '--out', out])).code).toBe(0);
    const before = readFileSync(out);
    // A limit of 8 blocks makes the system refuse what a full disk refuses.
    const run = limited(8, ['plan', sample, '--iterations', '4', '--json', '--out', out]);
    expect(errorOf(run, out).code).toBe('disk-full');
    expect(readFileSync(out).equals(before)).toBe(true);
    expect(readdirSync(folder)).toEqual(['plan.json']);
  }, 30_000);
});
