import { type Issue, issue } from '../base/index.ts';
import type { Product } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Labels whose own limits contradict each other: one of the two was entered wrongly. */
export const labelSense: Rule = {
  code: 'label-contradictory',
  find: (book) => book.products.flatMap((product) => [...carriers(product), ...rates(product)]),
};

function carriers(product: Product): readonly Issue[] {
  const { leastCarrierGalPer1000SqFt: least, mostCarrierGalPer1000SqFt: most } = product.label;
  if (least === undefined || most === undefined || least <= most) return [];
  const message = `Its label asks for at least ${least} and at most ${most} gal per 1,000 ft²; no mix can keep both. Correct one.`;
  return [issue('error', 'label-contradictory', named('product', product), message)];
}

function rates(product: Product): readonly Issue[] {
  const { mostPerApplication: once, mostPerYear: year } = product.label;
  if (once === undefined || year === undefined || once <= year) return [];
  const message = `Its label allows ${once} in one application but ${year} in a year; check both against the label.`;
  return [issue('warning', 'label-contradictory', named('product', product), message)];
}
