import type { PlanLoad, PlanProductAmount } from '../../plan/result/index.ts';
import { FLUID_OUNCES_PER_GALLON } from '../../units/index.ts';

/** What is measured out for a load of mix. */
export type MixAmounts = { readonly waterGal: number; readonly products: readonly PlanProductAmount[] };

/**
 * Water is what is missing to the volume once the liquid products are in; dry products take up no room worth counting. What lies
 * below the reach of the pump is mixed like the rest.
 */
export function mixAmounts(load: PlanLoad): MixAmounts {
  const share = load.volumeGal > 0 ? 1 + load.sumpGal / load.volumeGal : 1;
  const products = load.products.map((each) => ({ ...each, amount: each.amount * share }));
  const liquidGal = products.reduce(
    (sum, each) => sum + (each.unit === 'fl-oz' ? each.amount / FLUID_OUNCES_PER_GALLON : 0),
    0,
  );
  return { waterGal: Math.max(0, load.volumeGal + load.sumpGal - liquidGal), products };
}

/** What all loads of a day take together, each product in its own unit, in the order in which they come. */
export function dayAmounts(loads: readonly PlanLoad[]): MixAmounts & { readonly dryLb: number } {
  const products = new Map<string, PlanProductAmount>();
  let [waterGal, dryLb] = [0, 0];
  for (const load of loads) {
    const amounts = load.kind === 'tank' ? mixAmounts(load) : { waterGal: 0, products: load.products };
    waterGal += amounts.waterGal;
    dryLb += load.weightLb;
    for (const each of amounts.products) {
      const before = products.get(each.productId)?.amount ?? 0;
      products.set(each.productId, { ...each, amount: before + each.amount });
    }
  }
  return { waterGal, dryLb, products: [...products.values()] };
}
