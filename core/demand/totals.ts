import type { ProductAmount, ZoneDemand } from './types.ts';

/** What a list of demands comes to. */
export type DemandTotals = {
  readonly treatedSqFt: number;
  readonly volumeGal: number;
  readonly weightLb: number;
  /** One entry for each product, in the order of their first appearance. */
  readonly products: readonly ProductAmount[];
};

/** Sums demands. Ground that several treatments or steps go over counts once for each of them. */
export function totalDemand(demands: readonly ZoneDemand[]): DemandTotals {
  const products = new Map<string, ProductAmount>();
  for (const each of demands.flatMap((demand) => demand.products)) {
    const before = products.get(each.productId)?.amount ?? 0;
    products.set(each.productId, { ...each, amount: before + each.amount });
  }
  const sum = (value: (demand: ZoneDemand) => number): number =>
    demands.reduce((total, each) => total + value(each), 0);
  return {
    treatedSqFt: sum((each) => each.treatedSqFt),
    volumeGal: sum((each) => each.volumeGal),
    weightLb: sum((each) => each.weightLb),
    products: [...products.values()],
  };
}
