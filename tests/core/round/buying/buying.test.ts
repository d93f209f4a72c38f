import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Book, Product } from '../../../../core/book/index.ts';
import {
  buyingList,
  roundsToCome,
  type Use,
  usesOfPlan,
  usesOfSums,
  waterByFillPoint,
  weekOf,
} from '../../../../core/round/buying/index.ts';
import { plannedSums } from '../../../../core/round/ledger/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { BASE, doneOn, GROUND, roundOf } from '../ledger/season-book.ts';
import { activitiesOf, dayOf, loadOf, planOf } from './hand-plan.ts';

function stocked(more: Partial<Product>): Book {
  const products = BASE.products.map((each) =>
    each.id === 'meal' ? { ...each, bagLb: 50, pricePerUnit: 0.5, ...more } : each,
  );
  return { ...BASE, products };
}

const use = (roundId: string, date: string, amount: number, productId = 'meal'): Use => ({
  roundId,
  roundName: roundId,
  date,
  productId,
  amount,
  from: 'plan',
});

describe('what to buy over two rounds with stock', () => {
  // 30 lb in the store. March takes 60 + 40 lb in one week: 70 lb are missing, two bags, 30 lb are left. May takes 45 lb: 30 from the
  // store, 15 missing, one bag, 35 left.
  const uses = [use('may', '2027-05-10', 45), use('march', '2027-03-17', 40), use('march', '2027-03-15', 60)];
  const list = buyingList(stocked({ onHand: 30 }), uses, '2027-03-01');

  test('the store gives to the earlier one first, bags are whole, and what is left of them is used', () => {
    expect(list.lines).toMatchObject([
      {
        roundId: 'march',
        week: { label: '2027-W11', monday: '2027-03-15' },
        firstUse: '2027-03-15',
        need: 100,
        fromStock: 30,
        bags: 2,
        buy: 100,
        costUsd: 50,
      },
      {
        roundId: 'may',
        week: { label: '2027-W19', monday: '2027-05-10' },
        firstUse: '2027-05-10',
        need: 45,
        fromStock: 30,
        bags: 1,
        buy: 50,
        costUsd: 25,
      },
    ]);
    expect(list.left.get('meal')).toBe(35);
    expect(list.costUsd).toBe(75);
  });

  test('is ordered a week before its first use, or as many days as the product takes', () => {
    expect(list.orders.map((each) => [each.orderBy, each.amount, each.bags, each.late])).toEqual([
      ['2027-03-08', 100, 2, false],
      ['2027-05-03', 50, 1, false],
    ]);
    const slow = buyingList(stocked({ onHand: 30, leadDays: 21 }), uses, '2027-03-01');
    expect(slow.orders.map((each) => [each.orderBy, each.late])).toEqual([
      ['2027-02-22', true],
      ['2027-04-19', false],
    ]);
  });

  test('what is past needs nothing', () => {
    expect(buyingList(stocked({ onHand: 30 }), uses, '2027-03-16').lines).toMatchObject([
      { roundId: 'march', need: 40, fromStock: 30, bags: 1 },
      { roundId: 'may', need: 45, fromStock: 40, bags: 1 },
    ]);
  });

  test('a liquid without a bag is bought to the amount, and nothing where the store has it all', () => {
    const products = BASE.products.map((each) =>
      each.id === 'early' ? { ...each, onHand: 128, pricePerUnit: 2 } : each,
    );
    const drawn = buyingList(
      { ...BASE, products },
      [use('a', '2027-03-15', 128, 'early'), use('b', '2027-03-22', 12.5, 'early')],
      '2027-01-01',
    );
    expect(drawn.lines).toMatchObject([
      { roundId: 'a', fromStock: 128, buy: 0, bags: null },
      { roundId: 'b', fromStock: 0, buy: 12.5, costUsd: 25 },
    ]);
    expect(drawn.orders).toHaveLength(1);
  });

  test('ounces come in bags of pounds', () => {
    // 20 lb bags of a product in ounces: 320 oz each.
    const inOunces = buyingList(stocked({ unit: 'oz', bagLb: 20 }), [use('a', '2027-03-15', 321)], '2027-01-01');
    expect(inOunces.lines).toMatchObject([{ bags: 2, buy: 640 }]);
  });
});

test('over any uses the store balances, and no bag is bought that is not opened', () => {
  const day = fc.integer({ min: 1, max: 28 }).map((each) => `2027-04-${String(each).padStart(2, '0')}`);
  const some = fc.array(
    fc.record({ round: fc.constantFrom('a', 'b', 'c'), on: day, pounds: fc.integer({ min: 1, max: 400 }) }),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(some, fc.integer({ min: 0, max: 500 }), (made, onHand) => {
      const uses = made.map((each) => use(each.round, each.on, each.pounds));
      const list = buyingList(stocked({ onHand }), uses, '2027-01-01');
      const need = uses.reduce((sum, each) => sum + each.amount, 0);
      const bought = list.lines.reduce((sum, each) => sum + each.buy, 0);
      expect(bought).toBe(Math.ceil(Math.max(0, need - onHand) / 50) * 50);
      if (uses.length > 0) expect(list.left.get('meal')).toBe(onHand + bought - need);
      expect(list.orders.reduce((sum, each) => sum + each.amount, 0)).toBe(bought);
    }),
    { numRuns: casesOf(200, 5), seed: 6 },
  );
});

describe('weeks', () => {
  // ISO 8601: the first week of a year has its first Thursday.
  test.each([
    ['2027-01-01', '2026-W53', '2026-12-28'],
    ['2027-01-04', '2027-W01', '2027-01-04'],
    ['2024-12-30', '2025-W01', '2024-12-30'],
    ['2024-02-29', '2024-W09', '2024-02-26'],
    ['2020-12-31', '2020-W53', '2020-12-28'],
  ])('%s lies in %s', (date, label, monday) => {
    expect(weekOf(date)).toEqual({ label, monday });
  });
});

describe('uses', () => {
  test('of a plan are what its loads hold, with what stays below the pump', () => {
    // 20 gal with 4 fl oz, and 2 gal below the pump: a tenth more.
    const load = loadOf({ volumeGal: 20, sumpGal: 2, products: [{ productId: 'early', amount: 4, unit: 'fl-oz' }] });
    const uses = usesOfPlan(BASE, planOf([dayOf({ loads: [load, { ...load, sumpGal: 0 }] })]));
    expect(uses).toHaveLength(1);
    expect(uses[0]?.amount).toBeCloseTo(8.4, 12);
  });

  test('of a round without a plan come from rates and ground, without what is recorded', () => {
    const book: Book = {
      ...BASE,
      rounds: [roundOf('feed', ['2027-05-03', '2027-05-04'], ['meal']), roundOf('old', ['2027-02-01'], ['meal'])],
      visits: [doneOn('2027-05-03', 'feed', 'one', [{ zoneId: 'back', treatmentId: 'meal', treatedSqFt: 6000 }])],
    };
    // Two lawns of 10,000 ft² less 6,000 ft² at 5 lb.
    const toCome = roundsToCome(book, new Set(), '2027-05-04');
    expect([...toCome]).toEqual([['feed', '2027-05-04']]);
    const sums = plannedSums(book, { ground: GROUND }, new Set(toCome.keys()));
    for (const property of book.properties) sums.add(property);
    const uses = usesOfSums(toCome, sums.close());
    expect(uses).toMatchObject([{ roundId: 'feed', date: '2027-05-04', productId: 'meal', from: 'rates' }]);
    expect(uses[0]?.amount).toBeCloseTo(70, 12);
    expect(roundsToCome(book, new Set(['feed']), '2027-05-04').size).toBe(0);
  });
});

test('water by fill point: tanks, nurse tank, rinsing and sumps, less what is liquid product', () => {
  const book: Book = {
    ...BASE,
    fillPoints: [...BASE.fillPoints, { ...BASE.fillPoints[0]!, id: 'hydrant', name: 'Hydrant' }],
  };
  const fill = (volumeGal: number, flOz = 0) => ({
    compartmentId: 'tank',
    materialId: 'mix',
    volumeGal,
    weightLb: 0,
    products: [{ productId: 'early', amount: flOz, unit: 'fl-oz' }],
  });
  const water = (volumeGal: number) => ({ stock: 'water', productId: '', volumeGal, weightLb: 0, bags: 0 });
  const activities = activitiesOf([
    ['morning', 20, { fills: [fill(50, 128)], stock: [water(100), { ...water(0), stock: 'dry', weightLb: 500 }] }],
    ['refill', 10, { fills: [fill(40)] }],
    ['refill', 10, { fillPointId: 'hydrant', fills: [fill(20)], stock: [water(30)], rinseGal: 5 }],
    ['refill', 10, { fills: [fill(25)], rinseGal: 5 }],
  ]);
  const loads = [loadOf({ startSec: 0, sumpGal: 2 }), loadOf({ startSec: 40 * 60, sumpGal: 3 })];
  const found = waterByFillPoint(book, planOf([dayOf({ activities, loads })]));
  // At the shop 49 gal of water and 1 gal of product, 100 into the nurse tank, 2 below the pump. At the hydrant 20 + 30 + 5, and the 3 gal
  // below the pump that a later fill took out of the nurse tank.
  expect(found).toMatchObject([
    { fillPointId: 'shop', morningGal: 151, visitsGal: 0, visits: 0 },
    {
      fillPointId: 'hydrant',
      morningGal: 0,
      visitsGal: 58,
      visits: 1,
      byDay: [{ date: '2027-03-15', rigId: 'rig', gal: 58 }],
    },
  ]);
});

test('on the rest of a day under way nothing is taken of what is aboard', () => {
  // The rig's shift begins at 7:00; this day at 11:00, with 10 gal in the tank and a fill of 20 gal at the shop at 11:30.
  const startSec = 11 * 3600;
  const fill = (volumeGal: number) => ({
    compartmentId: 'tank',
    materialId: 'mix',
    volumeGal,
    weightLb: 0,
    products: [],
  });
  const activities = activitiesOf([
    ['morning', 0, { fills: [fill(10)], stock: [] }],
    ['drive', 30],
    ['refill', 10, { fillPointId: 'shop', fills: [fill(20)] }],
  ]).map((each) => ({ ...each, startSec: each.startSec + startSec, endSec: each.endSec + startSec }));
  const product = (amount: number) => [{ productId: 'early', amount, unit: 'fl-oz' as const }];
  const loads = [
    loadOf({ startSec, volumeGal: 10, products: product(2) }),
    loadOf({ startSec: startSec + 1800, volumeGal: 20, products: product(4) }),
  ];
  const plan = planOf([dayOf({ startSec, activities, loads })]);
  expect(usesOfPlan(BASE, plan).map((each) => each.amount)).toEqual([4]);
  expect(waterByFillPoint(BASE, plan)).toMatchObject([
    { fillPointId: 'shop', morningGal: 0, visitsGal: 20, visits: 1 },
  ]);
});
