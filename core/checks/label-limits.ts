import type { Issue } from '../base/index.ts';
import type { Book, SpreadRate, Treatment } from '../book/index.ts';
import { carrierLimitIssues, poundsIn, rateLimitIssues, spreadLbPer1000 } from '../demand/index.ts';
import { named, type Rule } from './rule.ts';

/** Rates and carrier volumes outside what the user entered from the label, in mixes and in treatments, with the arithmetic. */
export const labelLimits: Rule = {
  code: 'label-limit-broken',
  find: (book) => [
    ...book.mixes.flatMap((mix) => [
      ...rateLimitIssues(book.products, mix.parts, named('mix', mix)),
      ...carrierLimitIssues(book.products, mix, named('mix', mix)),
    ]),
    ...book.treatments.flatMap((treatment) =>
      dryRates(treatment).flatMap((each) => dryIssues(book, treatment, each.productId, each.rate)),
    ),
  ],
};

type DryRate = { readonly productId: string; readonly rate: SpreadRate };

function dryRates(treatment: Treatment): readonly DryRate[] {
  if (treatment.kind === 'spread') return [treatment];
  if (treatment.kind !== 'seed') return [];
  const { productId, lbPer1000SqFt, starter } = treatment;
  const seed: DryRate = { productId, rate: { kind: 'product', lbPer1000SqFt } };
  return starter === undefined ? [seed] : [seed, starter];
}

function dryIssues(book: Book, treatment: Treatment, productId: string, rate: SpreadRate): readonly Issue[] {
  const product = book.products.find((each) => each.id === productId);
  const pounds = product === undefined ? null : spreadLbPer1000(rate, product);
  if (product === undefined || pounds === null) return [];
  const amountPer1000SqFt = poundsIn(product.unit, pounds);
  if (amountPer1000SqFt === null) return [];
  return rateLimitIssues([product], [{ productId, amountPer1000SqFt }], named('treatment', treatment));
}
