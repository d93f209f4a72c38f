import type { Book, Product, Treatment } from '../../book/index.ts';
import { productRates } from '../../demand/index.ts';
import { add } from './contents.ts';
import type { ByProduct } from './types.ts';

/** What is known of the treatments of a book, looked up once. */
export type Recipes = {
  readonly products: ReadonlyMap<string, Product>;
  readonly treatments: ReadonlyMap<string, Treatment>;
  /** Of one application on 1,000 ft2; empty for treatments without products. */
  readonly rates: ReadonlyMap<string, ByProduct>;
  /** Carrier of the mix of a spray treatment, gal per 1,000 ft2. */
  readonly carriers: ReadonlyMap<string, number>;
};

/** What a book knows of its treatments, looked up once. */
export function recipesOf(book: Book): Recipes {
  return {
    products: new Map(book.products.map((each) => [each.id, each])),
    treatments: new Map(book.treatments.map((each) => [each.id, each])),
    rates: new Map(book.treatments.map((each) => [each.id, ratesOf(book, each)])),
    carriers: new Map(
      book.treatments.flatMap((each) => {
        const mix = each.kind === 'spray' ? book.mixes.find(({ id }) => id === each.mixId) : undefined;
        return mix === undefined ? [] : [[each.id, mix.carrierGalPer1000SqFt] as const];
      }),
    ),
  };
}

function ratesOf(book: Book, treatment: Treatment): ByProduct {
  const sums = new Map<string, number>();
  for (const { productId, amountPer1000SqFt } of productRates(book, treatment)) add(sums, productId, amountPer1000SqFt);
  return sums;
}
