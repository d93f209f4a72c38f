import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { NUTRIENTS, seasonLedger } from '../../../../core/round/ledger/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { BASE, doneOn, GROUND, roundOf, skippedOn } from './season-book.ts';

const day = fc
  .integer({ min: 0, max: 27 })
  .map((number) => `2027-0${1 + (number % 9)}-${String(1 + number).padStart(2, '0')}`);
const treatmentIds = fc.uniqueArray(fc.constantFrom('spray', 'feed', 'meal', 'sow'), { minLength: 1 });
const rounds = fc.array(fc.record({ dates: fc.array(day, { minLength: 1, maxLength: 3 }), treatmentIds }), {
  maxLength: 4,
});
const task = fc.record({
  zoneId: fc.constantFrom('front', 'back', 'gone'),
  treatmentId: fc.constantFrom('spray', 'feed', 'meal', 'sow'),
  treatedSqFt: fc.integer({ min: 1, max: 9000 }),
  usedGal: fc.option(fc.integer({ min: 0, max: 40 }), { nil: undefined }),
  usedLb: fc.option(fc.integer({ min: 0, max: 90 }), { nil: undefined }),
});
const visits = fc.array(
  fc.record({
    on: day,
    round: fc.integer({ min: 0, max: 4 }),
    lawn: fc.constantFrom('one', 'two'),
    tasks: fc.option(fc.array(task, { maxLength: 4 }), { nil: null }),
  }),
  { maxLength: 8 },
);

const books = fc.record({ rounds, visits }).map(({ rounds: made, visits: told }): Book => {
  const visited = told.map(({ on, round, lawn, tasks }, index) => {
    const visit = tasks === null ? skippedOn(on, `r${round}`, lawn) : doneOn(on, `r${round}`, lawn, tasks);
    return { ...visit, id: `v${index}` };
  });
  return {
    ...BASE,
    rounds: made.map((each, index) => roundOf(`r${index}`, each.dates, each.treatmentIds)),
    visits: visited,
  };
});

test('sums over lawns are sums over products, ingredients follow from products, and records alone are never lost', () => {
  fc.assert(
    fc.property(books, (book) => {
      const ledger = seasonLedger(book, '2027', { ground: GROUND });
      const total = (pick: (lawn: (typeof ledger.lawns)[number]) => number) =>
        ledger.lawns.reduce((sum, lawn) => sum + pick(lawn), 0);
      let nitrogen = 0;
      for (const product of book.products) {
        const amount = ledger.total.products.get(product.id) ?? 0;
        expect(total((lawn) => lawn.total.products.get(product.id) ?? 0)).toBeCloseTo(amount, 6);
        const byZone = total((lawn) =>
          lawn.zones.reduce((sum, zone) => sum + (zone.total.products.get(product.id) ?? 0), 0),
        );
        expect(byZone).toBeCloseTo(amount, 6);
        const pounds = product.unit === 'lb' ? 1 : (product.lbPerGal ?? 0) / 128;
        nitrogen += amount * pounds * (product.analysis?.nitrogen ?? 0);
      }
      expect(ledger.total.nutrients.nitrogen).toBeCloseTo(nitrogen, 6);
      for (const nutrient of NUTRIENTS)
        expect(total((lawn) => lawn.total.nutrients[nutrient])).toBeCloseTo(ledger.total.nutrients[nutrient], 6);
      // What visits alone put down, worked out here: gallons by the recipe, pounds as they are, else rate times ground.
      const rates = { spray: 0.4, feed: 25.6, meal: 5, sow: 5 } as const;
      const carriers = { spray: 2, feed: 1 } as const;
      const products = { spray: 'early', feed: 'feed', meal: 'meal', sow: 'grass' } as const;
      const recorded = new Map<string, number>();
      for (const { outcome } of book.visits)
        for (const each of outcome.kind === 'done' ? outcome.tasks : []) {
          const kind = each.treatmentId as keyof typeof rates;
          const byRate = (rates[kind] * each.treatedSqFt) / 1000;
          const wet = kind === 'spray' || kind === 'feed';
          const weighed = wet
            ? each.usedGal === undefined
              ? byRate
              : (each.usedGal / carriers[kind]) * rates[kind]
            : (each.usedLb ?? byRate);
          recorded.set(products[kind], (recorded.get(products[kind]) ?? 0) + weighed);
        }
      const only = seasonLedger({ ...book, rounds: [] }, '2027', { ground: GROUND });
      for (const [id, amount] of recorded) expect(only.total.products.get(id) ?? 0).toBeCloseTo(amount, 6);
    }),
    { numRuns: casesOf(200, 5), seed: 6 },
  );
});
