import { type Issue, issue } from '../base/index.ts';
import type { Treatment } from '../book/index.ts';
import { carrierLimitIssues, rateLimitIssues } from './label-limits.ts';
import { type DemandQuestion, placeOf } from './question.ts';
import type { ProductAmount, ZoneDemand } from './types.ts';

/** What one step of a treatment comes to: the demand, or issues that say why there is none. */
export type StepResult = { readonly demand: ZoneDemand | null; readonly issues: readonly Issue[] };

/**
 * Spraying: carrier x ground, and each product of the mix at its rate x ground (area in thousands of square feet). The carrier
 * rate counts the whole spray volume, products included.
 */
export function sprayStep(
  question: DemandQuestion,
  treatment: Treatment & { readonly kind: 'spray' },
  treatedSqFt: number,
): StepResult {
  const { book, property, zone } = question;
  const where = placeOf(question);
  const mix = book.mixes.find((each) => each.id === treatment.mixId);
  if (!mix)
    return missing(where, `Treatment ${treatment.name} sprays mix ${treatment.mixId}, which the book does not have.`);
  const products: ProductAmount[] = [];
  for (const part of mix.parts) {
    const product = book.products.find((each) => each.id === part.productId);
    if (!product)
      return missing(where, `Mix ${mix.name} holds product ${part.productId}, which the book does not have.`);
    products.push({ productId: product.id, amount: (part.amountPer1000SqFt * treatedSqFt) / 1000, unit: product.unit });
  }
  const broken = [
    ...rateLimitIssues(book.products, mix.parts, where),
    ...carrierLimitIssues(book.products, mix, where),
  ];
  if (broken.length > 0) return { demand: null, issues: broken };
  const volumeGal = (mix.carrierGalPer1000SqFt * treatedSqFt) / 1000;
  const ids = { propertyId: property.id, zoneId: zone.id, treatmentId: treatment.id, step: 0 };
  const demand = {
    ...ids,
    what: 'spray',
    materialId: mix.id,
    treatedSqFt,
    volumeGal,
    weightLb: 0,
    products,
    passes: 1,
  } as const;
  return { demand, issues: [] };
}

export function missing(where: string, message: string): StepResult {
  return { demand: null, issues: [issue('error', 'reference-missing', where, `${message} Choose one from the shed.`)] };
}
