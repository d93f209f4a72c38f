import { type Issue, issue } from '../../base/index.ts';
import type { Book } from '../../book/index.ts';
import { productRates, rateWords } from '../../demand/index.ts';
import { type Method, methodName } from '../../reach/index.ts';
import { formatNumber } from '../../units/index.ts';
import type { TaskFacts } from './options.ts';

/** Rates that only rounding takes above a limit are none. */
const DUST = 1e-9;

/** A rate that overlap, or overlap and calibration together, take above what a label allows in one application. */
export type OverRate = {
  readonly productId: string;
  /** Machine and head. */
  readonly name: string;
  readonly where: string;
  /** Asked for by the recipe, and what becomes of it on average; the product's unit per 1,000 ft2. */
  readonly asked: number;
  readonly becomes: number;
  readonly most: number;
  /** Passes over the ground that is reached, on average; delivered over asked carrier, 1 where it was never calibrated. */
  readonly passes: number;
  readonly delivered: number;
};

/**
 * Products of a task whose average rate, with the passes of a machine and what it really delivers, is above the most that the label allows in
 * an application. Whether the rate of the recipe is above it is asked elsewhere, and refused there.
 *
 * @param covered ground gone over as a multiple of the ground that is reached
 * @param delivered delivered carrier over that of the mix
 */
export function overRates(
  book: Book,
  { property, zone, treatment, demand }: TaskFacts,
  method: Method,
  covered: number,
  delivered: number,
): readonly OverRate[] {
  const ids = new Set(demand.products.map((each) => each.productId));
  return productRates(book, treatment).flatMap(({ productId, amountPer1000SqFt }): OverRate[] => {
    const most = book.products.find((each) => each.id === productId)?.label.mostPerApplication;
    const becomes = amountPer1000SqFt * covered * delivered;
    if (most === undefined || !ids.has(productId) || becomes <= most * (1 + DUST)) return [];
    const where = `property ${property.name}, zone ${zone.name}`;
    const name = methodName(book, method);
    return [{ productId, name, where, asked: amountPer1000SqFt, becomes, most, passes: covered, delivered }];
  });
}

/** One warning for each product and head, told with the arithmetic of the zone where the rate is highest. */
export function overlapIssues(book: Book, rates: readonly OverRate[]): readonly Issue[] {
  const groups = new Map<string, OverRate[]>();
  for (const each of rates) {
    const key = JSON.stringify([each.productId, each.name]);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((group) => {
    const worst = group.reduce((one, other) => (other.becomes > one.becomes ? other : one));
    const product = book.products.find((each) => each.id === worst.productId);
    const words = (rate: number): string => rateWords(product?.unit ?? 'fl-oz', rate);
    const more = worst.delivered === 1 ? '' : ` × ${factor(worst.delivered)} delivered`;
    const sum = `${words(worst.asked)} per 1,000 ft² asked × ${factor(worst.passes)} passes on average${more} = ${words(worst.becomes)}`;
    const count = new Set(group.map((each) => each.where)).size;
    const zones = count === 1 ? '' : `, the most of ${count} zones`;
    const text = `${product?.name ?? worst.productId}: ${sum}, ${words(worst.most)} allowed in an application (${worst.where}${zones}). Lower the rate, or let the passes overlap less.`;
    return issue('warning', 'rate-with-overlap', worst.name, text);
  });
}

function factor(value: number): string {
  return formatNumber(value, 2);
}
