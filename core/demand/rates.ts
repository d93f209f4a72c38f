import type { Product, SpreadRate } from '../book/index.ts';
import { FLUID_OUNCES_PER_GALLON, OUNCES_PER_POUND, RATE_AREA_SQFT, SQUARE_FEET_PER_ACRE } from '../units/index.ts';

/** An amount for each acre as an amount for each 1,000 ft2: over 43.56. */
export function perAcreTo1000(amountPerAcre: number): number {
  return (amountPerAcre * RATE_AREA_SQFT) / SQUARE_FEET_PER_ACRE;
}

/** An amount for each 1,000 ft2 as an amount for each acre: times 43.56. */
export function per1000ToAcre(amountPer1000SqFt: number): number {
  return (amountPer1000SqFt * SQUARE_FEET_PER_ACRE) / RATE_AREA_SQFT;
}

/**
 * Product that holds a wanted amount of what counts (active ingredient, nutrient): wanted / share of it by weight, from
 * above 0 to 1; in the unit of what is wanted. Source: Agrochemical and Pesticide Safety, p. 128; for fertiliser UMass
 * Extension, Rotary Spreader Calibration Procedures.
 */
export function productFor(wanted: number, share: number): number {
  return wanted / share;
}

/**
 * Pounds of granular product for 1,000 ft2.
 *
 * @returns null where the rate is by a nutrient that the product's analysis does not name or sets at 0
 */
export function spreadLbPer1000(rate: SpreadRate, product: Product): number | null {
  if (rate.kind === 'product') return rate.lbPer1000SqFt;
  const share = product.analysis?.[rate.nutrient] ?? 0;
  return share > 0 ? productFor(rate.lbPer1000SqFt, share) : null;
}

/** Pounds in the unit a dry product is measured in; null for a product measured by volume. */
export function poundsIn(unit: Product['unit'], pounds: number): number | null {
  if (unit === 'lb') return pounds;
  return unit === 'oz' ? pounds * OUNCES_PER_POUND : null;
}

/**
 * Amount of a product in each gallon of mix: rate per 1,000 ft2 over carrier per 1,000 ft2 (any one area serves).
 * Source: Sprayer Calibration, theturftrade.com, 2013.
 */
export function amountPerGallon(amountPer1000SqFt: number, carrierGalPer1000SqFt: number): number {
  return amountPer1000SqFt / carrierGalPer1000SqFt;
}

/** Amount of a product in a fill: amount in each gallon x gallons (Core Manual text, Calculating dilutions). */
export function amountInFill(perGallon: number, volumeGal: number): number {
  return perGallon * volumeGal;
}

/** Gallons of water in a spray volume: what its liquid products do not fill. Dry products are taken to fill nothing. */
export function waterIn(
  volumeGal: number,
  products: readonly { readonly amount: number; readonly unit: Product['unit'] }[],
): number {
  const ounces = products.reduce((sum, each) => sum + (each.unit === 'fl-oz' ? each.amount : 0), 0);
  return Math.max(0, volumeGal - ounces / FLUID_OUNCES_PER_GALLON);
}
