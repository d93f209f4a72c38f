import type { Book, Cap, Product } from '../../book/index.ts';
import { activePerUnit, nutrientPerUnit } from './contents.ts';
import type { Application, Limit } from './types.ts';

/** Sums of decimals may pass a limit by their last binary digit; that much is not a breach. */
const DUST = 1e-9;

/** Every yearly limit and every limit of one application: labels in the order of the products, then caps. */
export function limitsOf(book: Book): readonly Limit[] {
  return [...book.products.flatMap(labelLimits), ...book.caps.map((cap) => capLimit(book, cap))];
}

function labelLimits(product: Product): readonly Limit[] {
  const { mostPerYear, mostPerApplication } = product.label;
  const limit = (kind: 'product-year' | 'product-application', most: number | undefined): readonly Limit[] =>
    most === undefined
      ? []
      : [
          {
            id: `${kind} ${product.id}`,
            kind,
            name: product.name,
            most,
            unit: product.unit,
            source: '',
            per: new Map([[product.id, 1]]),
          },
        ];
  return [...limit('product-year', mostPerYear), ...limit('product-application', mostPerApplication)];
}

function capLimit(book: Book, cap: Cap): Limit {
  const { what, active = '' } = cap;
  const held = (product: Product): number =>
    what === 'active' ? activePerUnit(product, active) : (nutrientPerUnit(product, what) ?? 0);
  const per = new Map(book.products.map((each) => [each.id, held(each)] as const).filter(([, amount]) => amount > 0));
  return {
    id: `${what === 'active' ? 'active' : 'nutrient'} ${cap.id}`,
    kind: what === 'active' ? 'active' : 'nutrient',
    name: what === 'active' ? active : what,
    most: cap.mostLbPer1000SqFt,
    unit: 'lb',
    source: cap.source,
    per,
  };
}

/** What an application counts for a limit, on 1,000 ft2 of treated ground, in the limit's unit. */
export function countsFor(limit: Limit, { rates }: Pick<Application, 'rates'>): number {
  let sum = 0;
  for (const [productId, amount] of rates) sum += amount * (limit.per.get(productId) ?? 0);
  return sum;
}

export function isOver(limit: Limit, used: number): boolean {
  return used > limit.most * (1 + DUST);
}
