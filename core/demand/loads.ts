import type { Mix, Product } from '../book/index.ts';
import { amountInFill, amountPerGallon, waterIn } from './rates.ts';
import type { ProductAmount } from './types.ts';

/** One fill of a tank (gallons) and the ground it covers (square feet); products in their own units. */
export type TankLoad = {
  readonly areaSqFt: number;
  readonly volumeGal: number;
  readonly waterGal: number;
  readonly products: readonly ProductAmount[];
};

/** A job cut into tanks: so many full ones, and a last one mixed for exactly the ground that is left. */
export type TankLoads = { readonly full: number; readonly fullLoad: TankLoad; readonly last: TankLoad | null };

/** Ground that a tank covers: 1,000 V / R ft2, with V usable gallons and R gallons per 1,000 ft2. */
export function areaPerTank(usableGal: number, carrierGalPer1000SqFt: number): number {
  return (usableGal * 1000) / carrierGalPer1000SqFt;
}

/**
 * Cuts an area into tanks. Every full tank holds its usable volume, the last one only what the rest of the ground takes, so that
 * nothing is left over. What the pump cannot draw is not part of `usableGal`.
 *
 * @param usableGal above zero
 */
export function tankLoads(mix: Mix, products: readonly Product[], areaSqFt: number, usableGal: number): TankLoads {
  const perTank = areaPerTank(usableGal, mix.carrierGalPer1000SqFt);
  const full = Math.floor(areaSqFt / perTank + 1e-9);
  const rest = areaSqFt - full * perTank;
  const last = rest > perTank * 1e-9 ? loadFor(mix, products, rest) : null;
  return { full, fullLoad: loadFor(mix, products, perTank), last };
}

/** The fill that covers an area (square feet) exactly, however large a tank that takes. */
export function loadFor(mix: Mix, products: readonly Product[], areaSqFt: number): TankLoad {
  const volumeGal = (mix.carrierGalPer1000SqFt * areaSqFt) / 1000;
  const amounts = mix.parts.map((part): ProductAmount => {
    const unit = products.find((each) => each.id === part.productId)?.unit ?? 'fl-oz';
    const perGallon = amountPerGallon(part.amountPer1000SqFt, mix.carrierGalPer1000SqFt);
    return { productId: part.productId, amount: amountInFill(perGallon, volumeGal), unit };
  });
  return { areaSqFt, volumeGal, waterGal: waterIn(volumeGal, amounts), products: amounts };
}

/** Whole bags for a weight: ceil(lb / bag lb). A billionth of a bag is not worth opening one. */
export function bagsNeeded(weightLb: number, bagLb: number): number {
  return Math.max(0, Math.ceil(weightLb / bagLb - 1e-9));
}

/** Hopper loads for a weight, the last one partial: how many full ones and the pounds in the last (0 where it comes out even). */
export function hopperLoads(weightLb: number, capacityLb: number): { readonly full: number; readonly lastLb: number } {
  const full = Math.floor(weightLb / capacityLb + 1e-9);
  return { full, lastLb: Math.max(0, weightLb - full * capacityLb) };
}
