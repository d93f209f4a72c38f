import { type Issue, issue } from '../base/index.ts';
import type { Mix, Product } from '../book/index.ts';
import {
  FLUID_OUNCES_PER_GALLON,
  KILOGRAMS_PER_POUND,
  LITRES_PER_GALLON,
  OUNCES_PER_POUND,
  SQUARE_METRES_PER_SQUARE_FOOT,
  type UnitSystem,
} from '../units/index.ts';
import type { ZoneDemand } from './types.ts';

/** Sums of decimals may pass a limit by their last binary digit; that much is not a breach. */
const DUST = 1e-9;

/**
 * Rates of one application against the limits entered for its products. A product named twice counts with its sum.
 * Each breach is a 'label-limit-broken' error with its arithmetic.
 *
 * @param rates product ids and their rates in the product's unit per 1,000 ft2 of treated ground
 */
export function rateLimitIssues(
  products: readonly Product[],
  rates: readonly { readonly productId: string; readonly amountPer1000SqFt: number }[],
  where: string,
): readonly Issue[] {
  const sums = new Map<string, number>();
  for (const each of rates) sums.set(each.productId, (sums.get(each.productId) ?? 0) + each.amountPer1000SqFt);
  return [...sums].flatMap(([productId, rate]) => {
    const product = products.find((each) => each.id === productId);
    if (!product) return [];
    return [
      overLimit(product, rate, product.label.mostPerApplication, 'an application', where),
      overLimit(product, rate, product.label.mostPerYear, 'a year', where),
    ].flat();
  });
}

function overLimit(
  product: Product,
  rate: number,
  most: number | undefined,
  per: string,
  where: string,
): readonly Issue[] {
  if (most === undefined || rate <= most * (1 + DUST)) return [];
  const sum = `${rateWords(product.unit, rate)} per 1,000 ft² asked, ${rateWords(product.unit, most)} allowed in ${per} (${figure(rate)} > ${figure(most)}, ${figure((rate / most - 1) * 100)} % too much)`;
  return [
    issue('error', 'label-limit-broken', where, `${product.name}: ${sum}. Lower the rate to what the label allows.`),
  ];
}

/** The mix's carrier against the least and most that the labels of its products take. */
export function carrierLimitIssues(products: readonly Product[], mix: Mix, where: string): readonly Issue[] {
  const carrier = mix.carrierGalPer1000SqFt;
  return mix.parts.flatMap((part) => {
    const product = products.find((each) => each.id === part.productId);
    const least = product?.label.leastCarrierGalPer1000SqFt ?? 0;
    const most = product?.label.mostCarrierGalPer1000SqFt ?? Number.POSITIVE_INFINITY;
    if (!product || (carrier >= least * (1 - DUST) && carrier <= most * (1 + DUST))) return [];
    const limit = carrier < least ? `at least ${figure(least)}` : `at most ${figure(most)}`;
    const words = `${product.name}: the mix carries ${figure(carrier)} gal per 1,000 ft², the label asks for ${limit}.`;
    return [issue('error', 'label-limit-broken', where, `${words} Change the carrier volume of mix ${mix.name}.`)];
  });
}

/**
 * What several applications put on the same zone, against the yearly limits of the labels. Every application counts as if it
 * met the same ground, which is right for whole zones and on the safe side for spots and bands.
 *
 * @returns one 'label-limit-broken' error for each zone and product over its limit
 */
export function yearLimitIssues(products: readonly Product[], demands: readonly ZoneDemand[]): readonly Issue[] {
  return byZone(demands).flatMap(([where, applications]) =>
    products.flatMap((product) => {
      const rates = applications.flatMap((each) => rateOf(each, product.id));
      if (rates.length < 2) return [];
      const sum = rates.reduce((total, each) => total + each, 0);
      return overLimit(product, sum, product.label.mostPerYear, `a year, by ${rates.length} applications`, where);
    }),
  );
}

/**
 * Products whose label asks for days between two applications, applied more than once on one zone: what one round does at a property
 * may all be done on one day.
 *
 * @returns one 'label-limit-broken' error for each zone and product
 */
export function intervalIssues(products: readonly Product[], demands: readonly ZoneDemand[]): readonly Issue[] {
  return byZone(demands).flatMap(([where, applications]) =>
    products.flatMap((product) => {
      const least = product.label.leastDaysBetween;
      const times = applications.filter((each) => rateOf(each, product.id).length > 0).length;
      if (least === undefined || times < 2) return [];
      const words = `${product.name}: ${times} applications in one round, 0 days apart, its label asks for ${least} days in between (0 < ${least}). Put them into rounds of their own.`;
      return [issue('error', 'label-limit-broken', where, words)];
    }),
  );
}

function byZone(demands: readonly ZoneDemand[]): readonly (readonly [string, readonly ZoneDemand[]])[] {
  const zones = new Map<string, ZoneDemand[]>();
  for (const each of demands) {
    const where = `property ${each.propertyId}, zone ${each.zoneId}`;
    zones.set(where, [...(zones.get(where) ?? []), each]);
  }
  return [...zones];
}

function rateOf(demand: ZoneDemand, productId: string): readonly number[] {
  const amount = demand.products.reduce((sum, each) => sum + (each.productId === productId ? each.amount : 0), 0);
  return amount > 0 && demand.treatedSqFt > 0 ? [(amount * 1000) / demand.treatedSqFt] : [];
}

/** The ground that rates are put on, in words. */
export const RATE_GROUND = { us: '1,000 ft²', metric: '100 m²' } as const;

/** A rate without its ground: "1.2 fl oz" on 1,000 ft2; metric "38.2 mL", "488 g" on 100 m2. */
export function rateWords(unit: Product['unit'], amountPer1000SqFt: number, system: UnitSystem = 'us'): string {
  if (system === 'us') return `${figure(amountPer1000SqFt)} ${unitWord(unit)}`;
  const onHundred = amountPer1000SqFt / (10 * SQUARE_METRES_PER_SQUARE_FOOT);
  if (unit === 'fl-oz') return `${figure((onHundred / FLUID_OUNCES_PER_GALLON) * LITRES_PER_GALLON * 1000)} mL`;
  const pounds = unit === 'oz' ? onHundred / OUNCES_PER_POUND : onHundred;
  return `${figure(pounds * KILOGRAMS_PER_POUND * 1000)} g`;
}

function unitWord(unit: Product['unit']): string {
  return unit === 'fl-oz' ? 'fl oz' : unit;
}

/** Four figures, so that a breach is never shown as two equal numbers unless it is smaller than that. */
function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
