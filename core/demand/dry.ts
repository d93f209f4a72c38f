import { issue } from '../base/index.ts';
import type { SpreadRate } from '../book/index.ts';
import { rateLimitIssues } from './label-limits.ts';
import { type DemandQuestion, placeOf } from './question.ts';
import { poundsIn, spreadLbPer1000 } from './rates.ts';
import { missing, type StepResult } from './spray.ts';

/** Something dry to put down. */
export type DryWork = {
  readonly what: 'spread' | 'seed';
  readonly step: number;
  readonly productId: string;
  readonly rate: SpreadRate;
  readonly passes: number;
};

/**
 * Spreading or seeding: pounds for 1,000 ft2 x ground. The rate is for all passes together; the setting of the spreader for
 * each of them is the rate over the passes.
 */
export function dryStep(question: DemandQuestion, work: DryWork, treatedSqFt: number): StepResult {
  const { book, property, zone, treatment } = question;
  const where = placeOf(question);
  const product = book.products.find((each) => each.id === work.productId);
  if (!product) {
    return missing(where, `Treatment ${treatment.name} takes product ${work.productId}, which the book does not have.`);
  }
  const lbPer1000 = spreadLbPer1000(work.rate, product);
  if (lbPer1000 === null) {
    const nutrient = work.rate.kind === 'nutrient' ? work.rate.nutrient : '';
    const words = `${product.name} is to be spread by its ${nutrient}, but its analysis names none. Enter the printed analysis or a product rate.`;
    return { demand: null, issues: [issue('error', 'analysis-missing', where, words)] };
  }
  const perUnit = poundsIn(product.unit, lbPer1000);
  if (perUnit === null) {
    const words = `${product.name} is measured in fluid ounces and cannot be ${work.what === 'seed' ? 'sown' : 'spread'} by weight. Choose a dry product.`;
    return { demand: null, issues: [issue('error', 'product-not-dry', where, words)] };
  }
  const broken = rateLimitIssues(book.products, [{ productId: product.id, amountPer1000SqFt: perUnit }], where);
  if (broken.length > 0) return { demand: null, issues: broken };
  const demand = {
    propertyId: property.id,
    zoneId: zone.id,
    treatmentId: treatment.id,
    step: work.step,
    what: work.what,
    materialId: product.id,
    treatedSqFt,
    volumeGal: 0,
    weightLb: (lbPer1000 * treatedSqFt) / 1000,
    products: [{ productId: product.id, amount: (perUnit * treatedSqFt) / 1000, unit: product.unit }],
    passes: work.passes,
  } as const;
  return { demand, issues: [] };
}
