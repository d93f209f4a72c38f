import type { Treatment, Visit } from '../../book/index.ts';
import { OUNCES_PER_POUND } from '../../units/index.ts';
import { add } from './contents.ts';
import type { Recipes } from './recipes.ts';
import type { ByProduct } from './types.ts';

export type DoneTask = (Visit['outcome'] & { readonly kind: 'done' })['tasks'][number];

/**
 * What went down of each product in one piece of recorded work: as it was written down, else from the gallons or pounds that were used,
 * else from those that were expected, else from rate and ground.
 *
 * @param groundSqFt ground that was treated, ft2
 * @returns amounts in each product's own unit; null where neither the record names products nor the book has the treatment
 */
export function doneAmounts(recipes: Recipes, task: DoneTask, groundSqFt: number): ByProduct | null {
  if (task.products !== undefined) {
    const amounts = new Map<string, number>();
    for (const each of task.products) add(amounts, each.productId, each.amount);
    return amounts;
  }
  const treatment = recipes.treatments.get(task.treatmentId);
  if (treatment === undefined) return null;
  return treatment.kind === 'spray'
    ? sprayed(recipes, treatment, task, groundSqFt)
    : spread(recipes, treatment, task, groundSqFt);
}

/** From the gallons that went down, else those that were expected, else from rate and ground. */
function sprayed(recipes: Recipes, { id }: Treatment, task: DoneTask, groundSqFt: number): ByProduct {
  const gallons = task.usedGal ?? task.expectedGal;
  const carrier = recipes.carriers.get(id);
  const thousands = gallons === undefined || carrier === undefined ? groundSqFt / 1000 : gallons / carrier;
  return scaled(recipes.rates.get(id), thousands);
}

/** From the pounds that went down, else those that were expected, else from rate and ground; of a starter beside its seed by rate alone. */
function spread(recipes: Recipes, treatment: Treatment, task: DoneTask, groundSqFt: number): ByProduct {
  const pounds = task.usedLb ?? task.expectedLb;
  const amounts = new Map(scaled(recipes.rates.get(treatment.id), groundSqFt / 1000));
  const steps = stepsOf(treatment);
  const weighed = steps[task.step ?? 0];
  if (task.step !== undefined) for (const id of steps) if (id !== weighed) amounts.delete(id);
  if (pounds !== undefined && weighed !== undefined) {
    const isOunces = recipes.products.get(weighed)?.unit === 'oz';
    amounts.set(weighed, isOunces ? pounds * OUNCES_PER_POUND : pounds);
  }
  return amounts;
}

/** Products of a dry treatment by step. */
function stepsOf(treatment: Treatment): readonly string[] {
  if (treatment.kind === 'spread') return [treatment.productId];
  if (treatment.kind !== 'seed') return [];
  return [treatment.productId, ...(treatment.starter === undefined ? [] : [treatment.starter.productId])];
}

function scaled(rates: ByProduct | undefined, factor: number): ByProduct {
  return new Map([...(rates ?? [])].map(([id, rate]) => [id, rate * factor]));
}
