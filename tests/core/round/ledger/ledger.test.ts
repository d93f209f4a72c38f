import { describe, expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { arithmeticOf, type LawnYear, seasonLedger } from '../../../../core/round/ledger/index.ts';
import { BASE, doneOn, GROUND, roundOf, skippedOn, withLabel } from './season-book.ts';

const ledger = (book: Book, year = '2027') => seasonLedger(book, year, { ground: GROUND });
const lawnOf = (book: Book, id: string, year = '2027'): LawnYear => {
  const found = ledger(book, year).lawns.find((each) => each.propertyId === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const zoneOf = (book: Book, id: string, zoneId: string, year = '2027') => {
  const found = lawnOf(book, id, year).zones.find((each) => each.zoneId === zoneId);
  if (found === undefined) throw new Error(zoneId);
  return found;
};

const SPLIT: Book = {
  ...BASE,
  rounds: [roundOf('first', ['2027-03-15', '2027-03-16'], ['spray']), roundOf('second', ['2027-05-10'], ['spray'])],
};

describe('two rounds of a split application', () => {
  test('both planned: 0.4 + 0.4 fl oz on 1,000 ft², and on 4,000 ft² 2 x 1.6 fl oz', () => {
    const front = zoneOf(SPLIT, 'one', 'front');
    expect(front.per1000.products.get('early')).toBeCloseTo(0.8, 12);
    expect(front.total.products.get('early')).toBeCloseTo(3.2, 12);
    // 0.02 lb of active ingredient in each fl oz.
    expect(front.per1000.actives.get('Holdanil')).toBeCloseTo(0.016, 12);
    expect(lawnOf(SPLIT, 'one').total.products.get('early')).toBeCloseTo(8, 12);
    expect(lawnOf(SPLIT, 'one').share).toBeCloseTo(0.8, 12);
  });

  // The front has 4,000 ft²; 3,200 ft² were gone over with 8 gal of mix, 2.5 gal on 1,000 ft² where the mix has 2. In each gallon are
  // 0.4 / 2 = 0.2 fl oz: 1.6 fl oz in all, 1.6 / 3.2 = 0.5 on 1,000 ft².
  const recorded: Book = {
    ...SPLIT,
    visits: [
      doneOn('2027-03-16', 'first', 'one', [{ zoneId: 'front', treatmentId: 'spray', treatedSqFt: 3200, usedGal: 8 }]),
    ],
  };

  test('one recorded with other ground than planned counts as it was written down, and only where it was', () => {
    const front = zoneOf(recorded, 'one', 'front');
    expect(front.applications.map((each) => [each.status, each.treatedSqFt, each.first])).toEqual([
      ['recorded', 3200, '2027-03-16'],
      ['planned', 4000, '2027-05-10'],
    ]);
    expect(front.per1000.products.get('early')).toBeCloseTo(0.9, 12);
    expect(front.total.products.get('early')).toBeCloseTo(1.6 + 1.6, 12);
    expect(front.uses).toHaveLength(1);
    expect(front.uses[0]?.share).toBeCloseTo(0.9, 12);
    // The back is still to be done in both rounds.
    expect(zoneOf(recorded, 'one', 'back').applications.map((each) => each.status)).toEqual(['planned', 'planned']);
  });

  test('the arithmetic is in words', () => {
    const { limits } = ledger(recorded);
    const [limit] = limits;
    if (limit === undefined) throw new Error('no limit');
    expect(arithmeticOf(limit, zoneOf(recorded, 'one', 'front'), '2027')).toBe(
      'Early: 0.5 fl oz in round first (recorded 2027-03-16) + 0.4 fl oz in round second = 0.9 fl oz per 1,000 ft² in 2027, its label allows 1 fl oz',
    );
    // A fluid ounce of 29.5735 mL (a gallon of 3.785411784 L in 128) on 92.903 m2 is 31.83 mL on 100 m2.
    expect(arithmeticOf(limit, zoneOf(recorded, 'one', 'front'), '2027', 'metric')).toBe(
      'Early: 15.92 mL in round first (recorded 2027-03-16) + 12.73 mL in round second = 28.65 mL per 100 m² in 2027, its label allows 31.83 mL',
    );
  });

  test('a lawn recorded as skipped counts no longer, what was done before on it does', () => {
    const skipped = { ...SPLIT, visits: [skippedOn('2027-03-15', 'first', 'one')] };
    expect(zoneOf(skipped, 'one', 'front').per1000.products.get('early')).toBeCloseTo(0.4, 12);
    expect(zoneOf(skipped, 'two', 'front').per1000.products.get('early')).toBeCloseTo(0.8, 12);
    const half = { ...recorded, visits: [...recorded.visits, skippedOn('2027-03-17', 'first', 'one')] };
    expect(zoneOf(half, 'one', 'front').per1000.products.get('early')).toBeCloseTo(0.9, 12);
    expect(zoneOf(half, 'one', 'back').per1000.products.get('early')).toBeCloseTo(0.4, 12);
  });
});

describe('what was recorded', () => {
  const done = (
    ...tasks: readonly { treatedSqFt: number; usedGal?: number; on?: string; zoneId?: string }[]
  ): Book => ({
    ...BASE,
    rounds: [roundOf('first', ['2027-03-15'], ['spray'])],
    visits: tasks.map(({ on = '2027-03-15', zoneId = 'front', ...task }, index) => ({
      ...doneOn(on, 'first', 'one', [{ zoneId, treatmentId: 'spray', ...task }]),
      id: `visit-${index}`,
    })),
  });
  const rate = (book: Book, zoneId = 'front') => zoneOf(book, 'one', zoneId).per1000.products.get('early') ?? 0;

  test('without gallons goes by the rate of the mix', () => {
    expect(rate(done({ treatedSqFt: 3000 }))).toBeCloseTo(0.4, 12);
  });

  test('in two parts is one application over the ground of both', () => {
    // 3 gal on 1,500 ft² and 5 gal on 2,500 ft²: 0.6 + 1 fl oz over 4,000 ft².
    const book = done({ treatedSqFt: 1500, usedGal: 3 }, { treatedSqFt: 2500, usedGal: 5, on: '2027-03-16' });
    expect(rate(book)).toBeCloseTo(0.4, 12);
    expect(zoneOf(book, 'one', 'front').applications).toMatchObject([{ first: '2027-03-15', last: '2027-03-16' }]);
  });

  test('in two parts is one, whether the step is told or not', () => {
    const task = { zoneId: 'front', treatmentId: 'spray', treatedSqFt: 2000, usedGal: 4 };
    const visits = [doneOn('2027-03-15', 'x', 'one', [{ ...task, step: 0 }]), doneOn('2027-03-16', 'x', 'one', [task])];
    expect(rate({ ...BASE, rounds: [], visits })).toBeCloseTo(0.4, 12);
  });

  test('twice over the same ground counts twice', () => {
    // 8 gal each time: 3.2 fl oz on the 4,000 ft² that there are.
    expect(
      rate(done({ treatedSqFt: 4000, usedGal: 8 }, { treatedSqFt: 4000, usedGal: 8, on: '2027-03-16' })),
    ).toBeCloseTo(0.8, 12);
  });

  test('with amounts of products needs neither recipe nor treatment', () => {
    const task = {
      zoneId: 'front',
      treatmentId: 'gone',
      treatedSqFt: 2000,
      products: [{ productId: 'early', amount: 1.5 }],
    };
    const book = { ...BASE, rounds: [], visits: [doneOn('2027-04-01', 'gone', 'one', [task])] };
    expect(rate(book)).toBeCloseTo(0.75, 12);
    expect(ledger(book).gaps).toEqual([]);
  });

  test('by a treatment that is gone, without amounts, is told and not lost in silence', () => {
    const task = { zoneId: 'front', treatmentId: 'gone', treatedSqFt: 2000 };
    const book = { ...BASE, rounds: [], visits: [doneOn('2027-04-01', 'gone', 'one', [task])] };
    expect(ledger(book).gaps).toEqual([expect.stringMatching(/Lawn one, 2027-04-01: treatment gone is no longer/)]);
  });

  test('on a zone that the lawn no longer has counts against the limits of all its zones, and once in the sum', () => {
    const book = done({ treatedSqFt: 4000, usedGal: 8, zoneId: 'old' });
    expect(lawnOf(book, 'one').zones.map((each) => each.zoneId)).toEqual(['front', 'back', 'old']);
    // 0.4 recorded on the zone that is gone and 0.4 planned.
    expect(rate(book, 'front')).toBeCloseTo(0.8, 12);
    expect(rate(book, 'back')).toBeCloseTo(0.8, 12);
    // 1.6 recorded, 1.6 + 2.4 planned.
    expect(lawnOf(book, 'one').total.products.get('early')).toBeCloseTo(5.6, 12);
  });

  test('of seed weighs the seed, and its starter by rate where the step is not told', () => {
    const starter = { productId: 'meal', rate: { kind: 'product', lbPer1000SqFt: 2 }, passes: 1 } as const;
    const treatments = BASE.treatments.map((each) => (each.kind === 'seed' ? { ...each, starter } : each));
    const sown = (more: object): Book => ({
      ...BASE,
      treatments,
      rounds: [],
      visits: [
        doneOn('2027-09-01', 'gone', 'one', [
          { zoneId: 'front', treatmentId: 'sow', treatedSqFt: 4000, usedLb: 24, ...more },
        ]),
      ],
    });
    const amounts = (book: Book) => Object.fromEntries(zoneOf(book, 'one', 'front').total.products);
    expect(amounts(sown({}))).toEqual({ grass: 24, meal: 8 });
    expect(amounts(sown({ step: 0 }))).toEqual({ grass: 24 });
    expect(amounts(sown({ step: 1 }))).toEqual({ meal: 24 });
  });
});

describe('a calendar year', () => {
  test('ends on 31 December', () => {
    const tasks = [{ zoneId: 'front', treatmentId: 'spray', treatedSqFt: 4000 }];
    const book = {
      ...BASE,
      visits: [doneOn('2027-12-31', 'x', 'one', tasks), doneOn('2028-01-01', 'x', 'one', tasks)],
    };
    for (const year of ['2027', '2028'])
      expect(zoneOf(book, 'one', 'front', year).per1000.products.get('early')).toBeCloseTo(0.4, 12);
    expect(zoneOf(book, 'one', 'front', '2026').per1000.products.size).toBe(0);
  });

  test('has its leap day', () => {
    const tasks = [{ zoneId: 'front', treatmentId: 'spray', treatedSqFt: 4000 }];
    const book = { ...BASE, visits: [doneOn('2028-02-29', 'x', 'one', tasks)] };
    expect(zoneOf(book, 'one', 'front', '2028').per1000.products.get('early')).toBeCloseTo(0.4, 12);
  });

  test('counts a planned round with days in two years in both, until its day is known', () => {
    const book = { ...BASE, rounds: [roundOf('late', ['2027-12-30', '2028-01-03'], ['spray'])] };
    for (const year of ['2027', '2028']) expect(lawnOf(book, 'one', year).share).toBeCloseTo(0.4, 12);
    const known = (year: string) => seasonLedger(book, year, { ground: GROUND, plannedDay: () => '2028-01-03' });
    expect(known('2027').total.products.size).toBe(0);
    expect(known('2028').lawns[0]?.share).toBeCloseTo(0.4, 12);
  });
});

describe('nutrients', () => {
  // 1 lb N from 5 lb of 20-5-10; 25.6 fl oz are a fifth of a gallon of 10 lb, 2 lb with a quarter N: 0.5 lb.
  const book: Book = {
    ...BASE,
    rounds: [roundOf('spring', ['2027-04-01'], ['meal', 'feed'])],
    caps: [
      { id: 'n', what: 'nitrogen', mostLbPer1000SqFt: 2, source: '' },
      { id: 'h', what: 'active', active: ' holdanil', mostLbPer1000SqFt: 0.01, source: '' },
    ],
  };

  test('of a granular and a liquid product add up, phosphate and potash as printed', () => {
    const { per1000, total } = zoneOf(book, 'one', 'front');
    expect(per1000.nutrients.nitrogen).toBeCloseTo(1.5, 12);
    expect(per1000.nutrients.phosphate).toBeCloseTo(0.25, 12);
    expect(per1000.nutrients.potash).toBeCloseTo(0.5, 12);
    expect(total.nutrients.nitrogen).toBeCloseTo(6, 12);
    expect(lawnOf(book, 'one').worst).toMatchObject([{ limitId: 'nutrient n', used: 1.5, share: 0.75 }]);
  });

  test('of a liquid without a weight are told as not counted', () => {
    const products = book.products.map(({ lbPerGal: _, ...each }) => each);
    const light = { ...book, products };
    expect(zoneOf(light, 'one', 'front').per1000.nutrients.nitrogen).toBeCloseTo(1, 12);
    expect(ledger(light).gaps).toEqual([
      'Feed: the weight of a gallon is not entered, so its nutrients are not counted.',
    ]);
  });

  test('an active ingredient is found whatever its capitals and blanks', () => {
    const sprayed = { ...book, rounds: [roundOf('spring', ['2027-04-01'], ['spray'])] };
    expect(lawnOf(sprayed, 'one').worst.map((each) => [each.limitId, each.share])).toEqual([
      ['product-year early', 0.4],
      ['active h', expect.closeTo(0.8, 12)],
    ]);
  });
});

test('the limit of one application looks at the largest', () => {
  const book = withLabel(SPLIT, 'early', { mostPerApplication: 0.5 });
  const visits = [
    doneOn('2027-03-15', 'first', 'one', [{ zoneId: 'front', treatmentId: 'spray', treatedSqFt: 4000, usedGal: 9 }]),
  ];
  const use = lawnOf({ ...book, visits }, 'one').worst.find((each) => each.limitId === 'product-application early');
  // 9 gal hold 1.8 fl oz: 0.45 on 1,000 ft².
  expect(use).toMatchObject({ zoneId: 'front', share: expect.closeTo(0.9, 12) });
});

describe('published figures', () => {
  // S. Hart (Rutgers) via Kent County Cooperative Extension, 2009: pendimethalin, 2.0 to 3.0 lb of active ingredient per acre, as 1.0 to
  // 1.5 lb in April and as much again six to eight weeks later. An acre is 43.56 times 1,000 ft².
  test('a split of 1.5 + 1.5 lb of active ingredient per acre comes to the season’s 3.0', () => {
    const products = BASE.products.map((each) =>
      each.id === 'meal' ? { ...each, actives: [{ name: 'pendimethalin', lbPerUnit: 0.0086 }] } : each,
    );
    const lbPer1000SqFt = 1.5 / 0.0086 / 43.56;
    const treatments = BASE.treatments.map((each) =>
      each.kind === 'spread' ? { ...each, rate: { kind: 'product', lbPer1000SqFt } as const } : each,
    );
    const rounds = [roundOf('april', ['2027-04-10'], ['meal']), roundOf('june', ['2027-06-01'], ['meal'])];
    const caps = [
      { id: 'p', what: 'active', active: 'pendimethalin', mostLbPer1000SqFt: 3 / 43.56, source: '' } as const,
    ];
    const { per1000, uses } = zoneOf({ ...BASE, products, treatments, rounds, caps }, 'one', 'front');
    expect((per1000.actives.get('pendimethalin') ?? 0) * 43.56).toBeCloseTo(3, 9);
    expect(uses[0]?.share).toBeCloseTo(1, 9);
  });

  // University of Nebraska-Lincoln, Lawn Fertilizer Calculations (byf.unl.edu/LawnFertCalc): 28-3-6 at 1 lb N on 6,000 ft² takes 21.42 lb
  // (21.43 unrounded), 3.57 lb on 1,000 ft².
  test('6,000 ft² at 1 lb N of 28-3-6 take 21.4 lb and hold 6 lb N', () => {
    const analysis = { nitrogen: 0.28, phosphate: 0.03, potash: 0.06 };
    const products = BASE.products.map((each) => (each.id === 'meal' ? { ...each, analysis } : each));
    const back = zoneOf({ ...BASE, products, rounds: [roundOf('spring', ['2027-04-10'], ['meal'])] }, 'one', 'back');
    expect(back.per1000.products.get('meal')).toBeCloseTo(3.571, 3);
    expect(back.total.products.get('meal')).toBeCloseTo(21.43, 2);
    expect(back.total.nutrients.nitrogen).toBeCloseTo(6, 12);
  });
});
