import { type Issue, issue } from '../base/index.ts';
import type { Book, Product, SpreadRate, Treatment } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Products whose unit or missing figures make their amounts impossible to work out. */
export const products: Rule = {
  code: 'product-incomplete',
  find: (book) => [
    ...book.products.flatMap((product) => [...unit(product), ...bag(product), ...analysis(product)]),
    ...book.treatments.flatMap((treatment) => nutrient(book, treatment)),
  ],
};

function incomplete(severity: Issue['severity'], where: string, message: string): readonly Issue[] {
  return [issue(severity, 'product-incomplete', where, message)];
}

function unit(product: Product): readonly Issue[] {
  if ((product.form === 'liquid') === (product.unit === 'fl-oz')) return [];
  const message = `A ${product.form} product cannot be measured in ${product.unit}; choose the unit that its label uses.`;
  return incomplete('error', named('product', product), message);
}

function bag(product: Product): readonly Issue[] {
  const inBags = product.form === 'granular' || product.form === 'seed';
  if (!inBags || product.bagLb !== undefined) return [];
  const message = 'No bag weight is entered, so bags are counted as 50 lb; enter what is printed on the bag.';
  return incomplete('warning', named('product', product), message);
}

/** A printed analysis is in shares of the weight: together never more than the whole. */
function analysis(product: Product): readonly Issue[] {
  const { nitrogen, phosphate, potash } = product.analysis ?? { nitrogen: 0, phosphate: 0, potash: 0 };
  const sum = nitrogen + phosphate + potash;
  if (sum <= 1 + 1e-9) return [];
  const message = `Its analysis adds up to ${Math.round(sum * 100)} % of the weight; enter the shares as printed on the bag.`;
  return incomplete('error', named('product', product), message);
}

function nutrient(book: Book, treatment: Treatment): readonly Issue[] {
  const spread = spreadPart(treatment);
  if (spread === null || spread.rate.kind !== 'nutrient') return [];
  const { nutrient: wanted } = spread.rate;
  const product = book.products.find((each) => each.id === spread.productId);
  if (product === undefined || (product.analysis?.[wanted] ?? 0) > 0) return [];
  const message = `The rate is given by ${wanted}, but ${product.name} has none in its analysis; enter the analysis or the rate by product.`;
  return incomplete('error', named('treatment', treatment), message);
}

function spreadPart(treatment: Treatment): { readonly productId: string; readonly rate: SpreadRate } | null {
  if (treatment.kind === 'spread') return treatment;
  return treatment.kind === 'seed' && treatment.starter !== undefined ? treatment.starter : null;
}
