import { issue } from '../base/index.ts';
import { named, type Rule } from './rule.ts';

/** Products whose unit or missing figures make their amounts impossible to work out. */
export const products: Rule = {
  code: 'product-incomplete',
  find: (book) => [
    ...book.products.flatMap((product) => {
      const where = named('product', product);
      const wrongUnit = (product.form === 'liquid') !== (product.unit === 'fl-oz');
      const bagless = (product.form === 'granular' || product.form === 'seed') && product.bagLb === undefined;
      return [
        ...(wrongUnit
          ? [
              issue(
                'error',
                'product-incomplete',
                where,
                `A ${product.form} product cannot be measured in ${product.unit}; choose the unit that its label uses.`,
              ),
            ]
          : []),
        ...(bagless
          ? [
              issue(
                'warning',
                'product-incomplete',
                where,
                'No bag weight is entered, so bags are counted as 50 lb; enter what is printed on the bag.',
              ),
            ]
          : []),
      ];
    }),
    ...book.treatments.flatMap((treatment) => {
      if (treatment.kind !== 'spread' || treatment.rate.kind !== 'nutrient') return [];
      const product = book.products.find((each) => each.id === treatment.productId);
      const { nutrient } = treatment.rate;
      if (product === undefined || (product.analysis?.[nutrient] ?? 0) > 0) return [];
      return [
        issue(
          'error',
          'product-incomplete',
          named('treatment', treatment),
          `The rate is given by ${nutrient}, but ${product.name} has none in its analysis; enter the analysis or the rate by product.`,
        ),
      ];
    }),
  ],
};
