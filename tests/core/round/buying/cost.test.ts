import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { shareCents } from '../../../../core/round/buying/cents.ts';
import { COST_PARTS, roundCost } from '../../../../core/round/buying/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { sampleBook } from '../../../support/samples.ts';
import { BASE, roundOf } from '../ledger/season-book.ts';
import { activitiesOf, dayOf, loadOf, planOf, stopOf } from './hand-plan.ts';

const METRES_PER_MILE = 1609.344;

test('a day of two lawns by hand', () => {
  // Lawn a: 10 min way and 35 min there; lawn b: 20 and 60. That is 45 and 80 of 125 min; 55 min serve both: 20 in the morning, 10 for the
  // refill, 15 home, 10 in the evening. 3 h at $36 are $108: 64.8 min $38.88 and 115.2 min $69.12. Half an hour beyond the shift at half the
  // wage more: $9.00. Miles at $0.50: 5 + 6 x 0.36 and 10 + 6 x 0.64. Two days late at $3 each. 10 fl oz at $2 over 1,000 and 3,000 ft².
  const miles = (count: number) => ({ distanceM: count * METRES_PER_MILE });
  const activities = activitiesOf([
    ['morning', 20],
    ['drive', 10, miles(5)],
    ['set-up', 5],
    ['treat', 15],
    ['refill', 10],
    ['treat', 10],
    ['pack-up', 5],
    ['drive', 20, miles(10)],
    ['set-up', 5],
    ['treat', 50],
    ['pack-up', 5],
    ['drive', 15, miles(6)],
    ['evening', 10],
  ]);
  const covers = (propertyId: string, areaSqFt: number) => ({
    propertyId,
    zoneId: 'z',
    treatmentId: 't',
    fromSqFt: 0,
    areaSqFt,
  });
  const load = loadOf({
    volumeGal: 8,
    products: [{ productId: 'early', amount: 10, unit: 'fl-oz' }],
    covers: [covers('a', 1000), covers('b', 3000)],
  });
  const day = dayOf({
    activities,
    loads: [load],
    stops: [stopOf('a', 1), stopOf('b', 2)],
    paidSec: 3 * 3600,
    overtimeSec: 1800,
  });
  const book: Book = {
    ...BASE,
    products: BASE.products.map((each) => ({ ...each, pricePerUnit: 2 })),
    rounds: [roundOf('spring', ['2027-03-15'], ['spray'], { dueDate: '2027-03-13' })],
    prices: { wagePerHour: 36, overtimeFactor: 1.5, perMile: 0.5, perDayLate: 3, perRigDay: 25 },
  };
  const cost = roundCost(book, planOf([day]));
  expect(cost.cents).toEqual({
    wage: 10800,
    overtime: 900,
    miles: 1050,
    fixed: 2500,
    late: 1200,
    evenness: 0,
    product: 2000,
  });
  expect(cost.planCents).toBe(16450);
  expect(cost.totalCents).toBe(18450);
  expect(cost.lawns).toMatchObject([
    {
      propertyId: 'a',
      cents: { wage: 3888, overtime: 324, miles: 358, fixed: 900, late: 600, product: 500 },
      totalCents: 6570,
    },
    {
      propertyId: 'b',
      cents: { wage: 6912, overtime: 576, miles: 692, fixed: 1600, late: 600, product: 1500 },
      totalCents: 11880,
    },
  ]);
});

function planned(book: Book, evenUsdPerHour = 0): Plan {
  const problem = buildProblem(book, book.rounds[0]?.id ?? '', { evenUsdPerHour });
  if (!problem.ok) throw new Error(problem.error.detail);
  return explainPlan(book, problem.value, solve(problem.value, { seed: 1, iterations: 5 }));
}

describe('a planned round', () => {
  test('of the rest of a day under way costs what is still to come', () => {
    const sample = sampleBook('residential-day');
    const [round] = sample.rounds;
    const [rig] = sample.rigs;
    if (round === undefined || rig === undefined) throw new Error('the sample lacks it');
    const prices = { wagePerHour: 23.7, overtimeFactor: 1.5, perMile: 0.67, perDayLate: 0, perRigDay: 41.9 };
    const book = { ...sample, prices };
    const nowMin = rig.shiftStartMin + 200;
    const shop = sample.fillPoints.find((each) => each.id === rig.homeId);
    if (shop === undefined) throw new Error('no shop');
    const at = { id: shop.id, at: shop.at };
    const now = { rigId: rig.id, nowMin, at, hadBreak: true, compartments: [], waterGal: 0, bags: [] };
    const propertyIds = sample.properties.slice(0, 3).map((each) => each.id);
    const problem = buildProblem(book, round.id, { dates: round.dates.slice(0, 1), underWay: [now], propertyIds });
    if (!problem.ok) throw new Error(problem.error.detail);
    const plan = explainPlan(book, problem.value, solve(problem.value, { seed: 1, iterations: 5 }));
    expect(plan.days).toHaveLength(1);
    const cost = roundCost(book, plan);
    expect(cost.cents.fixed).toBe(0);
    expect(cost.planCents).toBe(Math.round(plan.totals.costUsd * 100));
  });

  test.each(['residential-day', 'mixed-day'] as const)(
    'of %s costs what its plan says, by parts and by lawns',
    (name) => {
      const sample = sampleBook(name);
      // Late by some days, so that every part counts.
      const rounds = sample.rounds.map((each) => ({ ...each, dueDate: '2027-03-01', propertyIds: 'all' as const }));
      const prices = { wagePerHour: 23.7, overtimeFactor: 1.5, perMile: 0.67, perDayLate: 1.13, perRigDay: 41.9 };
      // A few lawns do: what the explanation of a plan takes grows with their square.
      const book = { ...sample, rounds, prices, properties: sample.properties.slice(0, 4) };
      const plan = planned(book, 3);
      const cost = roundCost(book, plan);
      expect(cost.planCents).toBe(Math.round(plan.totals.costUsd * 100));
      expect(COST_PARTS.reduce((sum, part) => sum + cost.cents[part], 0)).toBe(cost.totalCents);
      for (const part of COST_PARTS)
        expect(cost.lawns.reduce((sum, lawn) => sum + lawn.cents[part], 0)).toBe(cost.cents[part]);
      expect(cost.lawns.reduce((sum, lawn) => sum + lawn.totalCents, 0)).toBe(cost.totalCents);
      expect(cost.lawns.reduce((sum, lawn) => sum + lawn.paidSec, 0)).toBeCloseTo(plan.totals.paidSec, -2);
      // Product at its price, sumps counted.
      const product = plan.days
        .flatMap((day) => day.loads)
        .flatMap((load) =>
          load.products.map((each) => ({
            ...each,
            share: 1 + (load.volumeGal > 0 ? load.sumpGal / load.volumeGal : 0),
          })),
        )
        .reduce((sum, each) => {
          const price = book.products.find(({ id }) => id === each.productId)?.pricePerUnit ?? 0;
          return sum + each.amount * each.share * price;
        }, 0);
      expect(Math.abs(cost.cents.product - product * 100)).toBeLessThan(1);
    },
  );
});

test('cents are shared to the last one, and nobody is a cent from his exact share', () => {
  fc.assert(
    fc.property(fc.nat(100_000), fc.array(fc.nat(1000), { minLength: 1, maxLength: 30 }), (cents, weights) => {
      const parts = shareCents(cents, weights);
      const sum = weights.reduce((total, each) => total + each, 0);
      expect(parts.reduce((total, each) => total + each, 0)).toBe(cents);
      for (const [index, part] of parts.entries()) {
        const exact = sum > 0 ? (cents * (weights[index] ?? 0)) / sum : cents / weights.length;
        expect(Math.abs(part - exact)).toBeLessThan(1);
      }
    }),
    { numRuns: casesOf(300, 5), seed: 6 },
  );
});
