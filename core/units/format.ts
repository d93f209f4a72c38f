import {
  INCHES_PER_FOOT,
  KILOGRAMS_PER_POUND,
  LITRES_PER_GALLON,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  SQUARE_FEET_PER_ACRE,
  SQUARE_METRES_PER_HECTARE,
  SQUARE_METRES_PER_SQUARE_FOOT,
} from './constants.ts';
import { decimalsFor, formatNumber } from './format-number.ts';

/** Which units are shown. Files keep US units whatever is shown. */
export type UnitSystem = 'us' | 'metric';

/** Area of a lawn from ft2, always in one unit so that columns line up: "12,500 ft²", "1,161 m²". */
export function formatArea(areaSqFt: number, system: UnitSystem = 'us'): string {
  return system === 'us'
    ? `${formatNumber(areaSqFt, areaSqFt < 10 ? 1 : 0)} ft²`
    : `${formatNumber(areaSqFt * SQUARE_METRES_PER_SQUARE_FOOT, areaSqFt < 100 ? 1 : 0)} m²`;
}

/** Area of larger ground from ft2 in acres or hectares: "3.64 ac", "1.47 ha". */
export function formatLargeArea(areaSqFt: number, system: UnitSystem = 'us'): string {
  const value =
    system === 'us'
      ? areaSqFt / SQUARE_FEET_PER_ACRE
      : (areaSqFt * SQUARE_METRES_PER_SQUARE_FOOT) / SQUARE_METRES_PER_HECTARE;
  return `${formatNumber(value, Math.abs(value) < 0.995 ? 3 : 2)} ${system === 'us' ? 'ac' : 'ha'}`;
}

/** Volume from gal: "12.5 gal", "47.3 L". One decimal throughout, two under 1. */
export function formatVolume(volumeGal: number, system: UnitSystem = 'us'): string {
  const value = system === 'us' ? volumeGal : volumeGal * LITRES_PER_GALLON;
  return `${formatNumber(value, Math.abs(value) < 0.95 ? 2 : 1)} ${system === 'us' ? 'gal' : 'L'}`;
}

/** Weight from lb: "21.4 lb", "9.7 kg"; whole figures from 1,000 on. */
export function formatWeight(weightLb: number, system: UnitSystem = 'us'): string {
  const value = system === 'us' ? weightLb : weightLb * KILOGRAMS_PER_POUND;
  return `${formatNumber(value, Math.abs(value) < 999.95 ? 1 : 0)} ${system === 'us' ? 'lb' : 'kg'}`;
}

/** Length on the ground from ft: "75 ft", "159.2 ft", "22.9 m". */
export function formatLength(lengthFt: number, system: UnitSystem = 'us'): string {
  if (system === 'metric') return `${formatNumber(lengthFt * METRES_PER_FOOT, 1)} m`;
  const whole = Math.abs(lengthFt - Math.round(lengthFt)) < 0.05 && Math.abs(lengthFt) >= 9.95;
  return `${formatNumber(lengthFt, whole || Math.abs(lengthFt) >= 999.95 ? 0 : 1)} ft`;
}

/** Width of gates and machines from inches: "34 in", "34.5 in", "86 cm". */
export function formatWidth(widthIn: number, system: UnitSystem = 'us'): string {
  if (system === 'metric') return `${formatNumber((widthIn / INCHES_PER_FOOT) * METRES_PER_FOOT * 100, 0)} cm`;
  return `${formatNumber(widthIn, Math.abs(widthIn - Math.round(widthIn)) < 0.05 ? 0 : 1)} in`;
}

/** Distance by road from metres: "3.2 mi", "5.1 km"; short ones in feet or metres: "450 ft", "140 m". */
export function formatDistance(metres: number, system: UnitSystem = 'us'): string {
  if (system === 'metric') return metres < 995 ? `${formatNumber(metres)} m` : `${formatNumber(metres / 1000, 1)} km`;
  const miles = metres / METRES_PER_MILE;
  return miles < 0.095 ? `${formatNumber(metres / METRES_PER_FOOT)} ft` : `${formatNumber(miles, 1)} mi`;
}

/** Speed from mph: "5 mph", "8.0 km/h". */
export function formatSpeed(speedMph: number, system: UnitSystem = 'us'): string {
  return system === 'us'
    ? `${formatNumber(speedMph, 1)} mph`
    : `${formatNumber((speedMph * METRES_PER_MILE) / 1000, 1)} km/h`;
}

/** Carrier rate from gal per 1,000 ft2: "0.33 gal/1,000 ft²", "1.34 L/100 m²". */
export function formatRate(galPer1000SqFt: number, system: UnitSystem = 'us'): string {
  if (system === 'us') return `${formatNumber(galPer1000SqFt, rateDecimals(galPer1000SqFt))} gal/1,000 ft²`;
  const litres = (galPer1000SqFt * LITRES_PER_GALLON) / (10 * SQUARE_METRES_PER_SQUARE_FOOT);
  return `${formatNumber(litres, rateDecimals(litres))} L/100 m²`;
}

/** Dollars and cents: "$1,250.50", "-$3.00". */
export function formatMoney(dollars: number): string {
  const figure = formatNumber(dollars, 2);
  return figure.startsWith('-') ? `-$${figure.slice(1)}` : `$${figure}`;
}

/** A share as a percentage: 0.25 -> "25 %", 0.125 -> "12.5 %". */
export function formatShare(share: number): string {
  const percent = share * 100;
  return `${formatNumber(percent, Math.abs(percent - Math.round(percent)) < 0.05 ? 0 : 1)} %`;
}

/** Slope from degrees: "15°", "12.5°". */
export function formatSlope(slopeDeg: number): string {
  return `${formatNumber(slopeDeg, Math.abs(slopeDeg - Math.round(slopeDeg)) < 0.05 ? 0 : 1)}°`;
}

function rateDecimals(value: number): number {
  return Math.abs(value) < 0.0995 ? 3 : Math.max(decimalsFor(value), 1);
}
