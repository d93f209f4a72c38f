import type { Book, Treatment, Visit } from '../../book/index.ts';
import { productRates } from '../../demand/index.ts';
import { OUNCES_PER_POUND } from '../../units/index.ts';

/** One task of a visit as it was written down. */
export type DoneTask = Extract<Visit['outcome'], { readonly kind: 'done' }>['tasks'][number];
type Products = NonNullable<DoneTask['products']>;

/**
 * What an amount of material holds of each product, each in its own unit: gallons of a mix by its rates over its carrier, pounds of
 * dry product as they are. Nothing where the book cannot tell: the treatment, its mix or its product is not in it.
 *
 * @param step of a treatment in two steps: 0 for the seed, 1 for its starter
 */
function productsIn(book: Book, treatment: Treatment, step: number, gal: number, lb: number): Products {
  if (treatment.kind === 'spray') {
    const carrier = book.mixes.find((each) => each.id === treatment.mixId)?.carrierGalPer1000SqFt;
    if (carrier === undefined) return [];
    return productRates(book, treatment).map(({ productId, amountPer1000SqFt }) => ({
      productId,
      amount: (amountPer1000SqFt / carrier) * gal,
    }));
  }
  const product = book.products.find((each) => each.id === dryProductOf(treatment, step));
  if (product === undefined) return [];
  return [{ productId: product.id, amount: product.unit === 'oz' ? lb * OUNCES_PER_POUND : lb }];
}

function dryProductOf(treatment: Treatment, step: number): string | undefined {
  if (treatment.kind === 'spread') return treatment.productId;
  if (treatment.kind !== 'seed') return undefined;
  return step === 0 ? treatment.productId : treatment.starter?.productId;
}

/** What went down, or was expected to where nothing was written down. */
function amountOf({ usedGal, expectedGal, usedLb, expectedLb }: DoneTask): number | undefined {
  return usedGal ?? expectedGal ?? usedLb ?? expectedLb;
}

/** The record of a zone with its products by the recipe as the book has it now; none where nothing was put down or the book cannot tell. */
export function withProducts(book: Book, task: DoneTask): DoneTask {
  const { products: _, ...rest } = task;
  const treatment = book.treatments.find((each) => each.id === task.treatmentId);
  if (treatment === undefined || amountOf(task) === undefined) return rest;
  const gal = task.usedGal ?? task.expectedGal ?? 0;
  const lb = task.usedLb ?? task.expectedLb ?? 0;
  const products = productsIn(book, treatment, task.step ?? 0, gal, lb);
  return products.length === 0 ? rest : { ...rest, products };
}

/**
 * The record of a zone with another amount used: gallons where gallons were expected, else pounds. Its products follow in the shares in
 * which they stand there, so that a recipe that was changed since the visit changes no record; by the recipe of the book where it has none.
 *
 * @param used gallons or pounds; null: not written down, so that what was expected stands
 */
export function withUsed(book: Book, task: DoneTask, used: number | null): DoneTask {
  const { usedGal: _, usedLb: __, ...rest } = task;
  const next: DoneTask =
    used === null ? rest : { ...rest, ...(task.expectedGal === undefined ? { usedLb: used } : { usedGal: used }) };
  const before = amountOf(task) ?? 0;
  const after = amountOf(next);
  const stand = task.products ?? [];
  if (after === undefined || before <= 0 || stand.length === 0) return withProducts(book, next);
  return { ...next, products: stand.map((each) => ({ ...each, amount: (each.amount * after) / before })) };
}
