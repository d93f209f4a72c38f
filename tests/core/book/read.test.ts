import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BOOK_VERSION, readBook, readBookValue } from '../../../core/book/index.ts';
import { sampleValue, square } from './sample.ts';

function failure(value: unknown) {
  const read = readBook(JSON.stringify(value), 'round.json');
  if (read.ok) throw new Error('read');
  return read.error;
}

describe('a good book', () => {
  test('is read with its defaults', () => {
    const read = readBook(JSON.stringify(sampleValue()), 'round.json');
    if (!read.ok) throw new Error(read.error.detail);
    const { book, issues } = read.value;
    expect(issues).toEqual([]);
    expect(book.units).toBe('us');
    expect(book.travel.circuity).toBe(1.4);
    expect(book.properties[0]?.zones[0]).toMatchObject({ slopeDeg: 0, gateIds: [] });
    expect(book.machines[0]?.heads[0]?.fieldEfficiency).toBe(0.65);
    expect(book.rounds).toEqual([]);
  });

  test('keeps unknown members at every depth and notes them', () => {
    const value = sampleValue();
    const strange = {
      ...value,
      colour: 'green',
      prices: { wagePerHour: 25, coffee: 3 },
      properties: [
        {
          ...value.properties[0],
          owner: { name: 'invented' },
          zones: [{ ...value.properties[0]!.zones[1], slopDeg: 3 }],
        },
      ],
    };
    const read = readBook(JSON.stringify(strange), 'round.json');
    if (!read.ok) throw new Error(read.error.detail);
    const { book, issues } = read.value;
    expect(book).toMatchObject({ colour: 'green', prices: { coffee: 3 } });
    expect(book.properties[0]).toMatchObject({ owner: { name: 'invented' } });
    expect(book.properties[0]?.zones[0]).toMatchObject({ slopDeg: 3, slopeDeg: 8 });
    expect(issues.map((each) => [each.code, each.severity])).toEqual(Array(4).fill(['unknown-member', 'note']));
    expect(issues.map((each) => each.where).sort()).toEqual([
      'round.json, colour',
      'round.json, prices.coffee',
      'round.json, properties[0].owner',
      'round.json, properties[0].zones[0].slopDeg',
    ]);
  });

  test('does not let a member named __proto__ through', () => {
    const text = JSON.stringify(sampleValue()).replace('"id":"p-1"', '"id":"p-1","__proto__":{"polluted":true}');
    const read = readBook(text, 'round.json');
    if (!read.ok) throw new Error(read.error.detail);
    expect((read.value.book.properties[0] as { polluted?: unknown }).polluted).toBeUndefined();
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test('many unknown members are counted, not all named', () => {
    const value = { ...sampleValue(), ...Object.fromEntries(Array.from({ length: 50 }, (_, i) => [`x${i}`, i])) };
    const read = readBookValue(value, 'round.json');
    if (!read.ok) throw new Error(read.error.detail);
    expect(read.value.issues).toHaveLength(21);
    expect(read.value.issues.at(-1)?.message).toContain('30 more');
  });
});

describe('a file that is no book of ours', () => {
  test.each([{}, [], null, 'text', 7, { format: 'other' }, { type: 'FeatureCollection', features: [] }])(
    '%j',
    (value) => {
      expect(failure(value).code).toBe('not-a-book');
    },
  );

  test('a newer version is refused before anything else is looked at', () => {
    const error = failure({ ...sampleValue(), version: BOOK_VERSION + 1, properties: 'changed meaning' });
    expect(error.code).toBe('newer-version');
    expect(error.hint).toContain('newer release');
  });

  test('text that is not JSON', () => {
    const read = readBook('{"format": "swardway-book",', 'round.json');
    expect(read).toMatchObject({ ok: false, error: { code: 'not-json', where: 'round.json, line 1, column 28' } });
  });
});

/** What is put over the sample, where the fault is, and words that the message must have. */
const FAULTS: readonly (readonly [string, (value: ReturnType<typeof sampleValue>) => unknown, string, RegExp])[] = [
  ['version 0', (value) => ({ ...value, version: 0 }), 'version', /should be 1, but is 0/],
  ['no name', ({ name: _, ...rest }) => rest, 'name', /missing/],
  ['a list that is a record', (value) => ({ ...value, rigs: {} }), 'rigs', /a list.*a record/],
  [
    'a slope of 61 degrees',
    (value) => withZone(value, { slopeDeg: 61 }),
    'properties[0].zones[0].slopeDeg',
    /"p-1" \/ "back".*60 or less, but is 61/,
  ],
  [
    'a number as text',
    (value) => withZone(value, { slopeDeg: '5' }),
    'properties[0].zones[0].slopeDeg',
    /a number.*"5"/,
  ],
  [
    'a negative area',
    (value) => withZone(value, { shape: { kind: 'stated', areaSqFt: -1 } }),
    'properties[0].zones[0].shape.areaSqFt',
    /0 or more, but is -1/,
  ],
  [
    'a shape of unknown kind',
    (value) => withZone(value, { shape: { kind: 'guessed' } }),
    'properties[0].zones[0].shape.kind',
    /"drawn", "stated".*"guessed"/,
  ],
  [
    'projected coordinates',
    (value) => ({ ...value, properties: [{ ...value.properties[0], parking: [1838000, 712000] }] }),
    'properties[0].parking[0]',
    /180 or less/,
  ],
  ['an unknown unit', (value) => ({ ...value, units: 'imperial' }), 'units', /"us", "metric".*"imperial"/],
  ['an id without characters', (value) => ({ ...value, id: '' }), 'id', /at least 1 character/],
  [
    'a date that is none',
    (value) => ({ ...value, rounds: [{ id: 'r', name: 'r', treatmentIds: ['t'], dates: ['3/31'], rigIds: ['x'] }] }),
    'rounds[0].dates[0]',
    /a date such as/,
  ],
  [
    'a round without days',
    (value) => ({ ...value, rounds: [{ id: 'r', name: 'r', treatmentIds: ['t'], dates: [], rigIds: ['x'] }] }),
    'rounds[0].dates',
    /at least 1/,
  ],
  ['half a bag place', (value) => withMachine(value, { bagPlaces: 1.5 }), 'machines[0].bagPlaces', /a whole number/],
  ['a width of 0', (value) => withMachine(value, { transitWidthIn: 0 }), 'machines[0].transitWidthIn', /more than 0/],
];

function withZone(value: ReturnType<typeof sampleValue>, changes: object): unknown {
  const [property] = value.properties;
  return { ...value, properties: [{ ...property, zones: [{ ...property?.zones[1], ...changes }] }] };
}

function withMachine(value: ReturnType<typeof sampleValue>, changes: object): unknown {
  return { ...value, machines: [{ ...value.machines[0], ...changes }] };
}

describe('a wrong member', () => {
  test.each(FAULTS)('%s', (_name, spoil, path, words) => {
    const error = failure(spoil(sampleValue()));
    expect(error.code).toBe('wrong-schema');
    expect(error.where).toBe(`round.json, ${path}`);
    expect(error.detail).toMatch(words);
    expect(error.detail, 'the path is told by the place alone').not.toMatch(/\w\[\d+\]\.|\.\w+\[/);
    expect(error.detail).toContain(`"${path.split('.').at(-1)}"`);
    expect(error.hint).not.toBe('');
  });

  test('further faults are counted', () => {
    expect(failure({ ...sampleValue(), units: 'x', name: 3 }).detail).toContain('1 more fault follows');
    expect(failure({ ...sampleValue(), units: 'x', name: 3, id: 4 }).detail).toContain('2 more faults follow');
  });
});

test('no value whatever makes the reader throw', () => {
  const anyBook = fc.record({
    format: fc.constant('swardway-book'),
    version: fc.constantFrom<unknown>(1, 0, '1', null),
    id: fc.anything(),
    name: fc.anything(),
    properties: fc.oneof(fc.anything(), fc.array(fc.anything())),
    machines: fc.oneof(fc.anything(), fc.array(fc.anything())),
  });
  fc.assert(
    fc.property(fc.oneof(anyBook, fc.anything()), (value) => {
      const read = readBookValue(value, 'any');
      if (!read.ok) expect(read.error.detail).not.toBe('');
    }),
  );
});

test('a book of 2,000 lawns (30 corners, 3 exclusions each) is read in a few seconds at most', () => {
  const ring = (half: number) => {
    const corners = Array.from({ length: 29 }, (_, at) => [
      -83 + half * Math.cos((at / 29) * 2 * Math.PI),
      40 + half * Math.sin((at / 29) * 2 * Math.PI),
    ]);
    return [...corners, corners[0]];
  };
  const geometry = (half: number) => ({ type: 'Polygon', coordinates: [ring(half)] });
  const properties = Array.from({ length: 2000 }, (_, index) => ({
    id: `p-${index}`,
    name: `lawn ${index}`,
    parking: square([-83, 40], 1e-4)[0],
    zones: [{ id: 'z', name: 'whole', shape: { kind: 'drawn', geometry: geometry(1e-4) } }],
    exclusions: [1, 2, 3].map((each) => ({ id: `e-${each}`, what: 'bed', geometry: geometry(1e-5) })),
  }));
  const text = JSON.stringify({ ...sampleValue(), properties });
  const start = performance.now();
  const read = readBook(text, 'large.json');
  const seconds = (performance.now() - start) / 1000;
  console.log(`reading 2,000 lawns (${(text.length / 1e6).toFixed(1)} MB): ${seconds.toFixed(2)} s`);
  expect(read.ok && read.value.book.properties.length).toBe(2000);
  // 0.5 s on the machine where this was written; the rest is room for a busy one.
  expect(seconds).toBeLessThan(8);
});
