import { carrierLimitIssues, productRates, rateLimitIssues } from '../demand/index.ts';
import { named, type Rule } from './rule.ts';

/** Rates and carrier volumes outside what the user entered from the label, in mixes and in treatments, with the arithmetic. */
export const labelLimits: Rule = {
  code: 'label-limit-broken',
  find: (book) => [
    ...book.mixes.flatMap((mix) => [
      ...rateLimitIssues(book.products, mix.parts, named('mix', mix)),
      ...carrierLimitIssues(book.products, mix, named('mix', mix)),
    ]),
    ...book.treatments
      .filter((each) => each.kind !== 'spray')
      .flatMap((each) => rateLimitIssues(book.products, productRates(book, each), named('treatment', each))),
  ],
};
