import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Book, readBook, type Zone } from '../../../core/book/index.ts';
import { checkBook, RULES } from '../../../core/checks/index.ts';

const SAMPLES = ['residential-day', 'mixed-day', 'four-day-round'] as const;

function sample(name: string): Book {
  const read = readBook(readFileSync(new URL(`../../../sample-routes/${name}.json`, import.meta.url), 'utf8'), name);
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}

const good = sample('mixed-day');
const first = <T>(list: readonly T[]): T => {
  const [item] = list;
  if (item === undefined) throw new Error('the sample lacks it');
  return item;
};

function turnedRound(zone: Zone): Zone {
  if (zone.shape.kind !== 'drawn' || zone.shape.geometry.type !== 'Polygon') return zone;
  const coordinates = zone.shape.geometry.coordinates.map((ring) => {
    const corners = ring.slice(1).reverse();
    return [...corners, first(corners)];
  });
  return { ...zone, shape: { kind: 'drawn', geometry: { type: 'Polygon', coordinates } } };
}

/** For each rule: the sample book with one thing broken that this rule has to find. */
const BROKEN: Readonly<Record<string, readonly Book[]>> = {
  'duplicate-id': [
    { ...good, mixes: [...good.mixes, first(good.mixes)] },
    { ...good, fillPoints: [...good.fillPoints, { ...first(good.fillPoints), id: first(good.properties).id }] },
    {
      ...good,
      properties: [
        { ...first(good.properties), zones: [first(good.properties).zones[0]!, first(good.properties).zones[0]!] },
      ],
    },
  ],
  'reference-missing': [
    { ...good, rigs: [{ ...first(good.rigs), homeId: 'nowhere' }] },
    { ...good, rigs: [{ ...first(good.rigs), handMethodIds: ['nothing'] }] },
    { ...good, products: [] },
    { ...good, rounds: [{ ...first(good.rounds), treatmentIds: ['nothing'] }] },
    { ...good, fillPoints: good.fillPoints.map((each) => ({ ...each, products: ['nothing'] })) },
    { ...good, properties: [{ ...first(good.properties), gates: [] }] },
    { ...good, machines: [{ ...first(good.machines), compartments: [] }] },
  ],
  'vessel-unusable': [
    {
      ...good,
      machines: [
        {
          ...first(good.machines),
          compartments: [{ kind: 'tank', id: 'tank', name: 'tank', capacityGal: 1, sumpGal: 1, agitated: true }],
        },
      ],
    },
    {
      ...good,
      machines: [{ ...first(good.machines), heads: [{ ...first(first(good.machines).heads), compartmentIds: [] }] }],
    },
    { ...good, handMethods: [{ ...first(good.handMethods), leastVolumeGal: 60 }] },
  ],
  'label-limit-broken': [
    { ...good, mixes: [{ ...first(good.mixes), parts: [{ productId: 'forecrop', amountPer1000SqFt: 0.61 }] }] },
    { ...good, mixes: [{ ...first(good.mixes), carrierGalPer1000SqFt: 0.2 }] },
    { ...good, mixes: [{ ...first(good.mixes), carrierGalPer1000SqFt: 3.5 }] },
    {
      ...good,
      treatments: [
        {
          id: 't',
          name: 't',
          kind: 'spread',
          productId: 'greenmeal',
          rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: 1.2 },
          coverage: { kind: 'whole' },
          flagFirst: [],
          flagMin: 0,
        },
      ],
    },
  ],
  'product-incomplete': [
    {
      ...good,
      products: good.products.map((each) => ({
        ...each,
        unit: each.form === 'liquid' ? ('lb' as const) : ('fl-oz' as const),
      })),
    },
    { ...good, products: good.products.map(({ bagLb: _, ...rest }) => rest) },
    { ...good, products: good.products.map(({ analysis: _, ...rest }) => rest) },
  ],
  'rate-differs': [
    {
      ...good,
      machines: good.machines.map((each) => ({
        ...each,
        heads: each.heads.map((head) => ({ ...head, deliveredGalPer1000SqFt: 0.54 })),
      })),
    },
  ],
  'round-senseless': [
    { ...good, rounds: [{ ...first(good.rounds), propertyIds: [] }] },
    { ...good, rounds: [{ ...first(good.rounds), dates: ['2027-03-24', '2027-03-24'] }] },
    { ...good, rounds: [{ ...first(good.rounds), dueDate: '2027-03-01' }] },
  ],
  'rig-cannot-work': [
    { ...good, rigs: good.rigs.map((each) => ({ ...each, payloadLb: 500 })) },
    { ...good, rigs: good.rigs.map((each) => ({ ...each, machines: [], handMethodIds: [] })) },
    { ...good, fillPoints: good.fillPoints.map((each) => ({ ...each, waterGpm: 0 })) },
  ],
  'duplicate-outline': [
    {
      ...good,
      properties: [
        ...good.properties,
        // The same corners from another start and the other way round.
        { ...first(good.properties), id: 'copy', zones: first(good.properties).zones.map(turnedRound) },
      ],
    },
  ],
  'zone-far-from-parking': [
    {
      ...good,
      properties: good.properties.map((each) => ({
        ...each,
        parking: [each.parking[0] + 0.1, each.parking[1]] as const,
      })),
    },
  ],
  'figure-absurd': [
    { ...good, machines: good.machines.map((each) => ({ ...each, transitWidthIn: 350 })) },
    {
      ...good,
      properties: good.properties.map((each) => ({ ...each, parking: [each.parking[1], each.parking[0]] as const })),
    },
    {
      ...good,
      properties: good.properties.map((each) => ({
        ...each,
        zones: each.zones.map((zone) => ({ ...zone, slopeDeg: 50 })),
      })),
    },
    {
      ...good,
      properties: good.properties.map((each) => ({
        ...each,
        gates: each.gates.map((gate) => ({ ...gate, clearWidthIn: 4800 })),
      })),
    },
  ],
};

describe.each(RULES.map((rule) => [rule.code, rule] as const))('rule %s', (code, rule) => {
  test.each(SAMPLES)('finds nothing in %s', (name) => {
    expect(rule.find(sample(name))).toEqual([]);
  });

  test('finds each of its counter-examples, under its own code, with place and remedy', () => {
    const books = BROKEN[code] ?? [];
    expect(books.length).toBeGreaterThan(0);
    for (const book of books) {
      const found = rule.find(book);
      expect(found.length).toBeGreaterThan(0);
      for (const each of found) {
        expect(each.code).toBe(code);
        expect(each.where).not.toBe('');
        expect(each.message.length).toBeGreaterThan(20);
      }
    }
  });

  test('does not throw on an empty book', () => {
    const empty = {
      ...good,
      properties: [],
      machines: [],
      handMethods: [],
      rigs: [],
      fillPoints: [],
      products: [],
      mixes: [],
      treatments: [],
      rounds: [],
    };
    expect(rule.find(empty)).toEqual([]);
  });
});

test('a calibration within 5 % is not complained about', () => {
  const close = {
    ...good,
    machines: good.machines.map((each) => ({
      ...each,
      heads: each.heads.map((head) => ({ ...head, deliveredGalPer1000SqFt: 0.524 })),
    })),
  };
  expect(checkBook(close)).toEqual([]);
});
