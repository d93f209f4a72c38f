import type { Book, Product } from '../../book/index.ts';
import { FLUID_OUNCES_PER_GALLON, OUNCES_PER_POUND } from '../../units/index.ts';
import { type Amounts, type ByProduct, NUTRIENTS, type Nutrient } from './types.ts';

/** Pounds in one unit of a product; null for one measured by volume whose weight was not entered. */
function poundsPerUnit({ unit, lbPerGal }: Product): number | null {
  if (unit === 'lb') return 1;
  if (unit === 'oz') return 1 / OUNCES_PER_POUND;
  return lbPerGal === undefined ? null : lbPerGal / FLUID_OUNCES_PER_GALLON;
}

/**
 * Pounds of a nutrient in one unit of a product by its printed analysis, phosphate and potash as printed.
 *
 * @returns null where the analysis names it but the weight of the product is not known
 */
export function nutrientPerUnit(product: Product, nutrient: Nutrient): number | null {
  const share = product.analysis?.[nutrient] ?? 0;
  if (share === 0) return 0;
  const pounds = poundsPerUnit(product);
  return pounds === null ? null : share * pounds;
}

/** Pounds of an active ingredient in one unit of a product; names are compared without capitals and blanks at the ends. */
export function activePerUnit(product: Product, name: string): number {
  return (product.actives ?? []).reduce((sum, each) => sum + (sameName(each.name, name) ? each.lbPerUnit : 0), 0);
}

export function sameName(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

/** Names of all active ingredients of the book, each once, as the first product has it. */
export function activeNames(book: Book): readonly string[] {
  const names: string[] = [];
  for (const { name } of book.products.flatMap((each) => each.actives ?? [])) {
    if (!names.some((known) => sameName(known, name))) names.push(name);
  }
  return names;
}

/** Products that hold nutrients by the analysis, but are measured by volume without a weight: their nutrients are not counted. */
export function unweighed(book: Book): readonly Product[] {
  return book.products.filter((each) => NUTRIENTS.some((nutrient) => nutrientPerUnit(each, nutrient) === null));
}

/** Turns amounts of products into amounts of what is in them. */
export function contentsOf(book: Book): (products: ByProduct) => Amounts {
  const names = activeNames(book);
  const holds = new Map(
    book.products.map((product) => [
      product.id,
      {
        actives: names.flatMap((name) => {
          const per = activePerUnit(product, name);
          return per > 0 ? [{ name, per }] : [];
        }),
        nutrients: NUTRIENTS.map((nutrient) => nutrientPerUnit(product, nutrient) ?? 0),
      },
    ]),
  );
  return (products) => {
    const actives = new Map<string, number>();
    const nutrients = { nitrogen: 0, phosphate: 0, potash: 0 };
    for (const [productId, amount] of products) {
      const inside = holds.get(productId);
      for (const { name, per } of inside?.actives ?? []) add(actives, name, amount * per);
      for (const [index, nutrient] of NUTRIENTS.entries())
        nutrients[nutrient] += amount * (inside?.nutrients[index] ?? 0);
    }
    return { products, actives, nutrients };
  };
}

/** Sums of amounts. */
export function sumAmounts(all: readonly Amounts[]): Amounts {
  const products = new Map<string, number>();
  const actives = new Map<string, number>();
  const nutrients = { nitrogen: 0, phosphate: 0, potash: 0 };
  for (const each of all) {
    for (const [id, amount] of each.products) add(products, id, amount);
    for (const [name, amount] of each.actives) add(actives, name, amount);
    for (const nutrient of NUTRIENTS) nutrients[nutrient] += each.nutrients[nutrient];
  }
  return { products, actives, nutrients };
}

export function add(sums: Map<string, number>, key: string, amount: number): void {
  sums.set(key, (sums.get(key) ?? 0) + amount);
}
