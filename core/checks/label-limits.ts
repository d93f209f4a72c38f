import { type Issue, issue } from '../base/index.ts';
import type { Book, Mix, Product } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

// Keeps a rate that equals its limit from being refused for the last bit of a division.
const SLACK = 1 + 1e-9;

/** Rates and carrier volumes outside what the user entered from the label. */
export const labelLimits: Rule = {
  code: 'label-limit-broken',
  find: (book) => [...book.mixes.flatMap((mix) => mixIssues(book, mix)), ...granularIssues(book)],
};

function broken(where: string, message: string): Issue {
  return issue('error', 'label-limit-broken', where, message);
}

function mixIssues(book: Book, mix: Mix): readonly Issue[] {
  return mix.parts.flatMap((part) => {
    const product = book.products.find((each) => each.id === part.productId);
    if (product === undefined) return [];
    const { leastCarrierGalPer1000SqFt: least, mostCarrierGalPer1000SqFt: most } = product.label;
    const carrier = mix.carrierGalPer1000SqFt;
    const where = `${named('mix', mix)}, ${product.name}`;
    return [
      ...rateIssue(where, product, part.amountPer1000SqFt),
      ...(least !== undefined && carrier * SLACK < least
        ? [
            broken(
              where,
              `The mix has ${carrier} gal per 1,000 ft2, the label asks for at least ${least}; use more water.`,
            ),
          ]
        : []),
      ...(most !== undefined && carrier > most * SLACK
        ? [broken(where, `The mix has ${carrier} gal per 1,000 ft2, the label allows at most ${most}; use less water.`)]
        : []),
    ];
  });
}

function rateIssue(where: string, product: Product, rate: number): readonly Issue[] {
  const most = product.label.mostPerApplication;
  if (most === undefined || rate <= most * SLACK) return [];
  return [
    broken(
      where,
      `${rate} ${product.unit} per 1,000 ft2 is ${(rate / most).toFixed(2)} times the ${most} that the label allows in one application; lower the rate.`,
    ),
  ];
}

function granularIssues(book: Book): readonly Issue[] {
  return book.treatments.flatMap((treatment) => {
    if (treatment.kind !== 'spread') return [];
    const product = book.products.find((each) => each.id === treatment.productId);
    if (product === undefined) return [];
    const share = treatment.rate.kind === 'nutrient' ? product.analysis?.[treatment.rate.nutrient] : 1;
    if (share === undefined || share <= 0) return [];
    return rateIssue(named('treatment', treatment), product, treatment.rate.lbPer1000SqFt / share);
  });
}
