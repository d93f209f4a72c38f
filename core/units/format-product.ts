import {
  FLUID_OUNCES_PER_GALLON,
  KILOGRAMS_PER_POUND,
  LITRES_PER_GALLON,
  OUNCES_PER_POUND,
  SQUARE_METRES_PER_SQUARE_FOOT,
} from './constants.ts';
import { formatVolume, type UnitSystem } from './format.ts';
import { decimalsFor, formatNumber, withoutTrailingZeros } from './format-number.ts';
import type { ProductUnit } from './parse.ts';

/**
 * Amount of a product as it is measured out, from the product's own unit: "12.4 fl oz", "1 gal 12 fl oz", "2 lb 3.5 oz",
 * "21.4 lb"; metric "366.7 mL", "4.14 L", "1.5 kg". Amounts that fill the larger unit are split, rounded to a tenth of an ounce
 * (whole ounces from 10 gal or 10 lb on), so that nothing carries wrongly: 127.97 fl oz is "1 gal".
 */
export function formatProductAmount(amount: number, unit: ProductUnit, system: UnitSystem = 'us'): string {
  if (!Number.isFinite(amount)) return '–';
  if (system === 'metric') return formatMetric(amount, unit);
  if (unit === 'fl-oz') return formatSplit(amount, 'gal', 'fl oz', FLUID_OUNCES_PER_GALLON);
  if (unit === 'oz') return formatSplit(amount, 'lb', 'oz', OUNCES_PER_POUND);
  return `${figure(amount)} lb`;
}

/** What is measured out: a product in its own unit, or a volume in gal. */
export type MeasuredUnit = ProductUnit | 'gal';

/** Amount in the very unit that it is measured in: "133.2 fl oz", "33.3 oz", "132.5 lb", "17.9 gal"; metric "3.94 L", "67.8 L". */
export function formatMeasured(amount: number, unit: MeasuredUnit, system: UnitSystem = 'us'): string {
  if (!Number.isFinite(amount)) return '–';
  if (unit === 'gal') return formatVolume(amount, system);
  if (system === 'metric') return formatMetric(amount, unit);
  return `${figure(amount)} ${unit === 'fl-oz' ? 'fl oz' : unit}`;
}

/**
 * The same with the next smaller unit for what is not whole: "1 gal 5.2 fl oz", "2 lb 1.3 oz", "17 gal 115 fl oz"; metric
 * "67 L 800 mL". '' where that says nothing more: less than one of the larger unit, or whole ones.
 */
export function formatWithSmaller(amount: number, unit: MeasuredUnit, system: UnitSystem = 'us'): string {
  if (!Number.isFinite(amount)) return '';
  const split = system === 'metric' ? metricSplit(amount, unit) : usSplit(amount, unit);
  return /\d \p{L}+ \d/u.test(split) ? split : '';
}

function usSplit(amount: number, unit: MeasuredUnit): string {
  switch (unit) {
    case 'gal':
      return formatSplit(amount * FLUID_OUNCES_PER_GALLON, 'gal', 'fl oz', FLUID_OUNCES_PER_GALLON);
    case 'fl-oz':
      return formatSplit(amount, 'gal', 'fl oz', FLUID_OUNCES_PER_GALLON);
    case 'lb':
      return formatSplit(amount * OUNCES_PER_POUND, 'lb', 'oz', OUNCES_PER_POUND);
    case 'oz':
      return formatSplit(amount, 'lb', 'oz', OUNCES_PER_POUND);
  }
}

function metricSplit(amount: number, unit: MeasuredUnit): string {
  if (unit === 'gal' || unit === 'fl-oz') {
    const gallons = unit === 'gal' ? amount : amount / FLUID_OUNCES_PER_GALLON;
    return formatSplit(gallons * LITRES_PER_GALLON * 1000, 'L', 'mL', 1000);
  }
  const pounds = unit === 'oz' ? amount / OUNCES_PER_POUND : amount;
  return formatSplit(pounds * KILOGRAMS_PER_POUND * 1000, 'kg', 'g', 1000);
}

/** Rate of a product per 1,000 ft2 (metric: per 100 m2): "0.37 fl oz/1,000 ft²", "5 lb/1,000 ft²", "117.8 mL/100 m²". */
export function formatProductRate(amountPer1000SqFt: number, unit: ProductUnit, system: UnitSystem = 'us'): string {
  if (system === 'us') return `${figure(amountPer1000SqFt)} ${unit === 'fl-oz' ? 'fl oz' : unit}/1,000 ft²`;
  return `${formatMetric(amountPer1000SqFt / (10 * SQUARE_METRES_PER_SQUARE_FOOT), unit)}/100 m²`;
}

function formatSplit(amount: number, large: string, small: string, perLarge: number): string {
  const tenths = Math.abs(amount) < 10 * perLarge ? 10 : 1;
  const rounded = Math.round(Math.abs(amount) * tenths) / tenths;
  const sign = amount < 0 && rounded > 0 ? '-' : '';
  if (rounded < perLarge) return `${sign}${figure(Math.abs(amount))} ${small}`;
  const whole = Math.floor(rounded / perLarge);
  const rest = Math.round((rounded - whole * perLarge) * tenths) / tenths;
  const first = `${sign}${formatNumber(whole)} ${large}`;
  return rest === 0 ? first : `${first} ${withoutTrailingZeros(formatNumber(rest, 1))} ${small}`;
}

function formatMetric(amount: number, unit: ProductUnit): string {
  if (unit === 'fl-oz') return metricPair((amount / FLUID_OUNCES_PER_GALLON) * LITRES_PER_GALLON, 'L', 'mL');
  const pounds = unit === 'oz' ? amount / OUNCES_PER_POUND : amount;
  return metricPair(pounds * KILOGRAMS_PER_POUND, 'kg', 'g');
}

function metricPair(value: number, large: string, small: string): string {
  return Math.abs(value) < 0.9995 ? `${figure(value * 1000)} ${small}` : `${figure(value)} ${large}`;
}

/** About three figures, but one decimal up to 1,000; small amounts keep three decimals. */
function figure(value: number): string {
  const size = Math.abs(value);
  const decimals = size < 0.995 ? 3 : size < 999.95 ? Math.max(1, decimalsFor(value)) : 0;
  return withoutTrailingZeros(formatNumber(value, decimals));
}
