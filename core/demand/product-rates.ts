import type { Book, SpreadRate, Treatment } from '../book/index.ts';
import { poundsIn, spreadLbPer1000 } from './rates.ts';

/** A product and what one application of it puts down, in the product's unit per 1,000 ft2 of treated ground. */
export type ProductRate = { readonly productId: string; readonly amountPer1000SqFt: number };

/**
 * What one application of a treatment puts down of each product, whatever the ground. Products that the book does not have, and dry
 * ones whose rate cannot be worked out, are left out: planning with them is refused elsewhere.
 */
export function productRates(book: Book, treatment: Treatment): readonly ProductRate[] {
  switch (treatment.kind) {
    case 'aerate':
      return [];
    case 'spray': {
      const parts = book.mixes.find((each) => each.id === treatment.mixId)?.parts ?? [];
      return parts.filter((part) => book.products.some((each) => each.id === part.productId));
    }
    case 'spread':
      return dryRate(book, treatment.productId, treatment.rate);
    case 'seed': {
      const rate = { kind: 'product', lbPer1000SqFt: treatment.lbPer1000SqFt } as const;
      const starter = treatment.starter ? dryRate(book, treatment.starter.productId, treatment.starter.rate) : [];
      return [...dryRate(book, treatment.productId, rate), ...starter];
    }
  }
}

function dryRate(book: Book, productId: string, rate: SpreadRate): readonly ProductRate[] {
  const product = book.products.find((each) => each.id === productId);
  const pounds = product === undefined ? null : spreadLbPer1000(rate, product);
  const amount = product === undefined || pounds === null ? null : poundsIn(product.unit, pounds);
  return amount === null ? [] : [{ productId, amountPer1000SqFt: amount }];
}
