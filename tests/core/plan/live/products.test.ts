import { describe, expect, test } from 'vitest';
import type { Book, Treatment } from '../../../../core/book/index.ts';
import { type DoneTask, visitAsPlanned, withUsed } from '../../../../core/plan/live/index.ts';
import type { PlanDay, PlanStop } from '../../../../core/plan/result/index.ts';
import { sampleBook } from '../../../support/samples.ts';

/**
 * 44 gallons treat one acre, which is 43.56 times 1,000 ft2 by its definition; so they hold 43.56 times the rates of the mix: 1.5 fl oz and
 * 0.02 oz make 65.34 fl oz and 0.8712 oz.
 */
const book: Book = {
  ...sampleBook('mixed-day'),
  products: [
    { id: 'herb', name: 'Herb', unit: 'fl-oz', label: {} },
    { id: 'dye', name: 'Dye', unit: 'oz', label: {} },
    { id: 'grains', name: 'Grains', unit: 'oz', label: {} },
    { id: 'seed', name: 'Seed', unit: 'lb', label: {} },
  ],
  mixes: [
    {
      id: 'mix',
      name: 'Mix',
      carrierGalPer1000SqFt: 44 / 43.56,
      parts: [
        { productId: 'herb', amountPer1000SqFt: 1.5 },
        { productId: 'dye', amountPer1000SqFt: 0.02 },
      ],
    },
  ],
  treatments: [
    { id: 'spray', kind: 'spray', mixId: 'mix' },
    { id: 'spread', kind: 'spread', productId: 'grains', rate: { kind: 'product', lbPer1000SqFt: 3 } },
    {
      id: 'seed',
      kind: 'seed',
      productId: 'seed',
      lbPer1000SqFt: 4,
      starter: { productId: 'grains', rate: { kind: 'product', lbPer1000SqFt: 2 } },
    },
    { id: 'cores', kind: 'aerate' },
  ] as unknown as readonly Treatment[],
  handMethods: [],
} as unknown as Book;

function written(treatmentId: string, amounts: { readonly volumeGal?: number; readonly weightLb?: number }, step = 0) {
  const method = { kind: 'hand', handMethodId: 'reel' };
  const task = { zoneId: 'z', treatmentId, step, method, areaSqFt: 1000, volumeGal: 0, weightLb: 0, ...amounts };
  const stop = { propertyId: 'p', arriveSec: 0, leaveSec: 0, driveSec: 0, tasks: [task] } as unknown as PlanStop;
  const { outcome } = visitAsPlanned(book, 'v', 'r', { activities: [] } as unknown as PlanDay, stop);
  return (outcome.kind === 'done' ? outcome.tasks[0] : undefined) as DoneTask;
}

const amountsOf = (task: DoneTask) => (task.products ?? []).map(({ productId, amount }) => [productId, amount]);

describe('what a visit writes down of each product', () => {
  test('gallons are split by the rates of the mix over its carrier', () => {
    const products = written('spray', { volumeGal: 44 }).products ?? [];
    expect(products.map((each) => each.productId)).toEqual(['herb', 'dye']);
    expect(products[0]?.amount).toBeCloseTo(65.34, 9);
    expect(products[1]?.amount).toBeCloseTo(0.8712, 9);
  });

  test('pounds are in the unit of the product, and a starter is written down by its own step', () => {
    expect(amountsOf(written('spread', { weightLb: 3 }))).toEqual([['grains', 48]]);
    expect(amountsOf(written('seed', { weightLb: 20 }))).toEqual([['seed', 20]]);
    expect(amountsOf(written('seed', { weightLb: 8 }, 1))).toEqual([['grains', 128]]);
  });

  test('nothing is said where nothing is put down, and where the book does not know the treatment', () => {
    expect(written('cores', {})).not.toHaveProperty('products');
    expect(written('gone', { volumeGal: 4 })).not.toHaveProperty('products');
  });
});

describe('an amount that is corrected', () => {
  test('moves all products with it, and back when it is taken out again', () => {
    const task = written('spray', { volumeGal: 44 });
    const more = withUsed(book, task, 55);
    expect(more).toMatchObject({ expectedGal: 44, usedGal: 55 });
    expect(more.products?.[0]?.amount).toBeCloseTo((65.34 * 55) / 44, 9);
    const back = withUsed(book, more, null);
    expect(back).not.toHaveProperty('usedGal');
    expect(back.products?.[0]?.amount).toBeCloseTo(65.34, 9);
    expect(withUsed(book, written('spread', { weightLb: 3 }), 4)).toMatchObject({
      expectedLb: 3,
      usedLb: 4,
      products: [{ productId: 'grains', amount: 64 }],
    });
  });

  test('keeps the recipe of the day of the visit, whatever the book has now', () => {
    const task = written('spray', { volumeGal: 44 });
    const changed = { ...book, mixes: book.mixes.map((mix) => ({ ...mix, parts: [] })) };
    expect(withUsed(changed, task, 22).products?.[0]?.amount).toBeCloseTo(65.34 / 2, 9);
  });

  test('can be nothing, and something again', () => {
    const none = withUsed(book, written('spray', { volumeGal: 44 }), 0);
    expect(amountsOf(none)).toEqual([
      ['herb', 0],
      ['dye', 0],
    ]);
    expect(withUsed(book, none, 44).products?.[0]?.amount).toBeCloseTo(65.34, 9);
  });

  test('of a record without products is split by the recipe of the book', () => {
    const { products: _, ...old } = written('spray', { volumeGal: 44 });
    expect(withUsed(book, old, 44).products?.[0]?.amount).toBeCloseTo(65.34, 9);
  });
});
