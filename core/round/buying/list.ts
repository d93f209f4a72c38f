import type { Book, Product } from '../../book/index.ts';
import { bagsNeeded } from '../../demand/index.ts';
import { addDays, OUNCES_PER_POUND } from '../../units/index.ts';
import type { BuyingList, BuyLine, Order, Use } from './types.ts';
import { weekOf } from './weeks.ts';

/** Days between ordering a product and its first use, where the product says nothing else: a week. */
const USUAL_LEAD_DAYS = 7;
/** Sums of decimals may miss a level by their last binary digit; that much is not worth buying. */
const DUST = 1e-9;

/** Uses of one product by one round in one week. */
type Need = Pick<BuyLine, 'roundId' | 'roundName' | 'week' | 'firstUse' | 'productId' | 'need' | 'from'>;

/**
 * What to buy for rounds, in order of first use. The store gives first, to whoever uses a product earliest; the rest is bought, in whole
 * bags where it comes in bags, and what is left of the last bag goes back to the store for the next line. Products without a bag weight
 * are bought to the amount.
 *
 * @param uses of products that the book has; others are left out
 * @param today uses before it are past and need nothing; orders to be made before it are marked as late
 */
export function buyingList(book: Book, uses: readonly Use[], today: string): BuyingList {
  const products = new Map(book.products.map((each) => [each.id, each]));
  const left = new Map<string, number>();
  const lines = needsOf(uses.filter((each) => each.date >= today)).flatMap((need) => {
    const product = products.get(need.productId);
    if (product === undefined) return [];
    const stock = left.get(product.id) ?? product.onHand ?? 0;
    const line = lineOf(product, need, stock);
    left.set(product.id, Math.max(0, stock + line.buy - need.need));
    return [line];
  });
  return {
    lines,
    orders: ordersOf(lines, today),
    left,
    costUsd: lines.reduce((sum, each) => sum + each.costUsd, 0),
  };
}

function needsOf(uses: readonly Use[]): readonly Need[] {
  const needs = new Map<string, Need>();
  for (const { roundId, roundName, date, productId, amount, from } of uses) {
    const week = weekOf(date);
    const key = JSON.stringify([roundId, week.label, productId]);
    const known = needs.get(key);
    const firstUse = known !== undefined && known.firstUse < date ? known.firstUse : date;
    needs.set(key, { roundId, roundName, week, productId, from, firstUse, need: (known?.need ?? 0) + amount });
  }
  return [...needs.values()].toSorted((one, other) => compare(one.firstUse, other.firstUse));
}

function lineOf(product: Product, need: Need, stock: number): BuyLine {
  const fromStock = Math.min(stock, need.need);
  const lacking = need.need - fromStock;
  const short = lacking > need.need * DUST ? lacking : 0;
  const perBag = bagAmount(product);
  const bags = perBag === null ? null : bagsNeeded(short, perBag);
  const buy = perBag === null || bags === null ? short : bags * perBag;
  const orderBy = addDays(need.firstUse, -(product.leadDays ?? USUAL_LEAD_DAYS));
  return { ...need, orderBy, fromStock, buy, bags, costUsd: buy * product.pricePerUnit };
}

/** What a bag holds in the product's unit; null where it has none. */
function bagAmount({ bagLb, unit }: Product): number | null {
  if (bagLb === undefined || unit === 'fl-oz') return null;
  return unit === 'oz' ? bagLb * OUNCES_PER_POUND : bagLb;
}

/** Orders by day; of one product on one day one. */
function ordersOf(lines: readonly BuyLine[], today: string): readonly Order[] {
  const orders = new Map<string, Order>();
  for (const { productId, firstUse, orderBy, buy, bags, costUsd } of lines) {
    if (buy <= 0) continue;
    const key = JSON.stringify([orderBy, productId]);
    const known = orders.get(key);
    orders.set(key, {
      productId,
      orderBy,
      firstUse,
      amount: (known?.amount ?? 0) + buy,
      bags: bags === null ? null : (known?.bags ?? 0) + bags,
      costUsd: (known?.costUsd ?? 0) + costUsd,
      late: orderBy < today,
    });
  }
  return [...orders.values()].toSorted((one, other) => compare(one.orderBy, other.orderBy));
}

function compare(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}
