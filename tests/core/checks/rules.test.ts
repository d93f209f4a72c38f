import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Book, Head, Machine, Zone } from '../../../core/book/index.ts';
import { checkBook, RULES } from '../../../core/checks/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { BROKEN_DAYS, BROKEN_ROUND_REFERENCES } from './broken-days.ts';
import { BROKEN_GROUND } from './broken-ground.ts';
import { BROKEN_SEASON } from './broken-season.ts';

const SAMPLES = ['residential-day', 'mixed-day', 'four-day-round'] as const;

const good = sampleBook('mixed-day');
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

const withHeads =
  (change: (head: Head) => Head) =>
  (machine: Machine): Machine => ({ ...machine, heads: machine.heads.map(change) });
const without = ({ passes: _, ...head }: Head): Head => head;

/** For each rule: the sample book with one thing broken that this rule has to find. */
const BROKEN: Readonly<Record<string, readonly Book[]>> = {
  ...BROKEN_GROUND,
  ...BROKEN_SEASON,
  ...BROKEN_DAYS,
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
    ...BROKEN_ROUND_REFERENCES,
    { ...good, rigs: [{ ...first(good.rigs), homeId: 'nowhere' }] },
    { ...good, rigs: [{ ...first(good.rigs), handMethodIds: ['nothing'] }] },
    { ...good, products: [] },
    { ...good, rounds: [{ ...first(good.rounds), treatmentIds: ['nothing'] }] },
    { ...good, fillPoints: good.fillPoints.map((each) => ({ ...each, products: ['nothing'] })) },
    { ...good, properties: [{ ...first(good.properties), gates: [] }] },
    { ...good, machines: [{ ...first(good.machines), compartments: [] }] },
    { ...good, applicators: [{ id: 'a', name: 'A', licence: '12', rigIds: ['nowhere'], note: '' }] },
  ],
  'head-without-passes': [{ ...good, machines: good.machines.map(withHeads((head) => without(head))) }],
  'passes-not-possible': [
    {
      ...good,
      machines: good.machines.map(
        withHeads((head) => ({ ...head, passes: { overlapFt: head.swathFt, trimPasses: 1, turnSec: 4 } })),
      ),
    },
    {
      ...good,
      machines: good.machines.map(
        withHeads((head) => ({ ...head, passes: { overlapFt: 0, trimPasses: 1, turnSec: 4, sectionsFt: [1, 2] } })),
      ),
    },
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
    // A hose on a hopper, and a tank whose sump is all of it.
    {
      ...good,
      handMethods: [{ ...first(good.handMethods), what: 'hose', drawsFrom: { kind: 'own-hopper', capacityLb: 5 } }],
    },
    {
      ...good,
      handMethods: [
        {
          ...first(good.handMethods),
          what: 'hose',
          drawsFrom: { kind: 'rig', capacityGal: 5, sumpGal: 5, agitated: true },
        },
      ],
    },
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
    {
      ...good,
      products: good.products.map((each) => ({ ...each, analysis: { nitrogen: 0.5, phosphate: 0.4, potash: 0.2 } })),
    },
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
  'calibration-due': [
    {
      ...good,
      machines: good.machines.map((each) => ({
        ...each,
        heads: each.heads.map((head) => ({ ...head, dueAfterUses: 8, usesSince: 8 })),
      })),
    },
    { ...good, handMethods: good.handMethods.map((each) => ({ ...each, dueAfterUses: 1, usesSince: 3 })) },
  ],
  'round-senseless': [
    { ...good, properties: good.properties.map((each) => ({ ...each, zones: [] })) },
    { ...good, rounds: [{ ...first(good.rounds), dates: ['2027-02-29'] }] },
    { ...good, rounds: [{ ...first(good.rounds), dueDate: '2027-04-31' }] },
    { ...good, rounds: [{ ...first(good.rounds), propertyIds: [] }] },
    { ...good, rounds: [{ ...first(good.rounds), dates: ['2027-03-24', '2027-03-24'] }] },
    { ...good, rounds: [{ ...first(good.rounds), dueDate: '2027-03-01' }] },
  ],
  'listed-twice': [
    { ...good, rounds: good.rounds.map((each) => ({ ...each, rigIds: [...each.rigIds, ...each.rigIds] })) },
    { ...good, rounds: good.rounds.map((each) => ({ ...each, treatmentIds: ['t', 't'] })) },
    { ...good, rounds: good.rounds.map((each) => ({ ...each, propertyIds: ['p', 'p'] })) },
    { ...good, rigs: good.rigs.map((each) => ({ ...each, machines: [...each.machines, ...each.machines] })) },
    { ...good, rigs: good.rigs.map((each) => ({ ...each, handMethodIds: ['h', 'h'] })) },
    { ...good, mixes: good.mixes.map((each) => ({ ...each, parts: [...each.parts, ...each.parts] })) },
  ],
  'machine-on-two-rigs': [
    {
      ...good,
      rigs: good.rigs.map((each) => ({ ...each, machines: first(good.rigs).machines })),
      rounds: [{ ...first(good.rounds), rigIds: good.rigs.map((each) => each.id) }],
    },
  ],
  'label-contradictory': [
    {
      ...good,
      products: good.products.map((each) => ({
        ...each,
        label: { ...each.label, leastCarrierGalPer1000SqFt: 2, mostCarrierGalPer1000SqFt: 1 },
      })),
    },
    {
      ...good,
      products: good.products.map((each) => ({
        ...each,
        label: { ...each.label, mostPerApplication: 2, mostPerYear: 1 },
      })),
    },
  ],
  'hours-reversed': [
    { ...good, properties: good.properties.map((each) => ({ ...each, hours: { openMin: 600, closeMin: 480 } })) },
    { ...good, fillPoints: good.fillPoints.map((each) => ({ ...each, hours: { openMin: 600, closeMin: 600 } })) },
  ],
  'travel-incomplete': [
    { ...good, travel: { ...good.travel, speeds: [] } },
    { ...good, travel: { ...good.travel, speeds: [{ upToMiles: 5, mph: 30 }] } },
    {
      ...good,
      travel: {
        ...good.travel,
        speeds: [
          { upToMiles: 5, mph: 30 },
          { upToMiles: 2, mph: 20 },
          { upToMiles: null, mph: 40 },
        ],
      },
    },
    { ...good, matrix: { source: 'csv', placeIds: ['a', 'b'], durationSec: [[0, 1]], distanceM: [[0, 1]] } },
  ],
  'zone-without-area': [
    { ...good, properties: good.properties.map((each) => ({ ...each, zones: [] })) },
    {
      ...good,
      properties: good.properties.map((each) => ({
        ...each,
        zones: each.zones.map((zone) => ({ ...zone, shape: { kind: 'stated' as const, areaSqFt: 0, method: '' } })),
      })),
    },
    {
      ...good,
      properties: good.properties.map((each) => ({
        ...each,
        zones: each.zones.map((zone) => ({
          ...zone,
          shape: { kind: 'drawn' as const, geometry: { type: 'Polygon' as const, coordinates: [] } },
        })),
      })),
    },
  ],
  'rig-cannot-work': [
    {
      ...good,
      rigs: good.rigs.map((each) => ({ ...each, machines: [] })),
      handMethods: good.rigs.flatMap((rig) =>
        rig.handMethodIds.map((id) => ({
          ...first(good.handMethods),
          id,
          drawsFrom: { kind: 'machine' as const, machineId: 'elsewhere', compartmentId: 'tank' },
        })),
      ),
    },
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

const TABLE_NAMES = [
  'properties',
  'machines',
  'handMethods',
  'rigs',
  'fillPoints',
  'products',
  'mixes',
  'treatments',
  'rounds',
] as const;

type Damage = { readonly table: (typeof TABLE_NAMES)[number]; readonly how: 'none' | 'half' | 'twice' | 'same-id' };

const anyDamage: fc.Arbitrary<readonly Damage[]> = fc.array(
  fc.record({
    table: fc.constantFrom(...TABLE_NAMES),
    how: fc.constantFrom<Damage['how']>('none', 'half', 'twice', 'same-id'),
  }),
  { maxLength: 5 },
);

function damaged(book: Book, damage: readonly Damage[]): Book {
  let spoilt = book;
  for (const { table, how } of damage) {
    const records: readonly { readonly id: string }[] = spoilt[table];
    const changed = {
      none: [],
      half: records.filter((_, at) => at % 2 === 1),
      twice: [...records, ...records],
      'same-id': records.map((each) => ({ ...each, id: 'same' })),
    }[how];
    spoilt = { ...spoilt, [table]: changed };
  }
  return spoilt;
}

test('every rule has a code of its own, and the whole check is the rules one after the other', () => {
  expect(new Set(RULES.map((each) => each.code)).size).toBe(RULES.length);
  const broken = damaged(good, [
    { table: 'products', how: 'none' },
    { table: 'machines', how: 'twice' },
  ]);
  expect(checkBook(broken)).toEqual(RULES.flatMap((rule) => rule.find(broken)));
  expect(checkBook(broken).length).toBeGreaterThan(0);
});

describe.each(RULES.map((rule) => [rule.code, rule] as const))('rule %s', (code, rule) => {
  test.each(SAMPLES)('finds nothing in %s', (name) => {
    expect(rule.find(sampleBook(name))).toEqual([]);
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

  test('does not throw whatever is missing or put in place of something else', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLES.map(sampleBook)), anyDamage, (book, damage) => {
        for (const each of rule.find(damaged(book, damage))) expect(each.code).toBe(code);
      }),
      { numRuns: 40 },
    );
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
      applicators: [],
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

test('a second head for another volume is no disagreement, as long as one of them suits the mix', () => {
  const [wanted] = good.mixes.map((each) => each.carrierGalPer1000SqFt);
  const delivering = (rate: number | undefined) => ({
    ...good,
    machines: good.machines.map((each) => ({
      ...each,
      heads: each.heads.flatMap((head) => [
        { ...head, deliveredGalPer1000SqFt: rate },
        { ...head, id: `${head.id}-2`, deliveredGalPer1000SqFt: 4 },
      ]),
    })),
    handMethods: good.handMethods.map((each) => ({ ...each, deliveredGalPer1000SqFt: undefined })),
    mixes: good.mixes.map((each) => ({ ...each, carrierGalPer1000SqFt: wanted ?? 1 })),
  });
  const rule = RULES.find((each) => each.code === 'rate-differs');
  expect(rule?.find(delivering(wanted) as Book)).toEqual([]);
  expect(rule?.find(delivering(undefined) as Book).length).toBeGreaterThan(0);
});

test('a granular product measured in ounces is held against its label in ounces', () => {
  const product = {
    ...first(good.products),
    id: 'grain',
    form: 'granular' as const,
    unit: 'oz' as const,
    label: { registration: '', needsAgitation: false, note: 'invented, not for use', mostPerApplication: 40 },
  };
  const spreading = (lbPer1000SqFt: number): Book => ({
    ...good,
    products: [...good.products, product],
    treatments: [
      {
        id: 't',
        name: 't',
        kind: 'spread',
        productId: 'grain',
        rate: { kind: 'product', lbPer1000SqFt },
        coverage: { kind: 'whole' },
        flagFirst: [],
        flagMin: 0,
      },
    ],
  });
  const rule = RULES.find((each) => each.code === 'label-limit-broken');
  // 40 oz are 2.5 lb.
  expect(rule?.find(spreading(2.5))).toEqual([]);
  const [found] = rule?.find(spreading(3)) ?? [];
  expect(found?.message).toContain('48 oz per 1,000 ft² asked, 40 oz');
  expect(found?.message).toContain('20 % too much');
});

test('the whole check of a 2,000-lawn book takes a second or so', () => {
  const [lawn] = sampleBook('four-day-round').properties;
  if (lawn === undefined) throw new Error('the sample lacks it');
  const properties = Array.from({ length: 2000 }, (_, at) => ({ ...lawn, id: `lawn-${at}` }));
  const start = performance.now();
  checkBook({ ...sampleBook('four-day-round'), properties });
  const seconds = (performance.now() - start) / 1000;
  console.log(`checking 2,000 lawns: ${seconds.toFixed(2)} s`);
  expect(seconds).toBeLessThan(6);
});
