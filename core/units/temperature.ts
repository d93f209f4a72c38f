import { err, ok, type Result } from '../base/index.ts';
import type { UnitSystem } from './format.ts';
import { formatNumber, withoutTrailingZeros } from './format-number.ts';
import { decimalComma, normalise, quote } from './quantity-text.ts';

/** Degrees of one scale for each of the other, and where their zeros lie: exact by definition. */
const FAHRENHEIT_PER_CELSIUS = 9 / 5;
const FREEZING_F = 32;
/** Of what can be typed, F; no weather on earth has been outside of it. */
const LEAST_F = -130;
const MOST_F = 160;
const MOST_DIFFERENCE_F = 100;

/** A temperature in degrees Fahrenheit from one in Celsius. */
export function fahrenheit(celsius: number): number {
  return celsius * FAHRENHEIT_PER_CELSIUS + FREEZING_F;
}

/** A temperature in degrees Celsius from one in Fahrenheit. */
export function celsius(temperatureF: number): number {
  return (temperatureF - FREEZING_F) / FAHRENHEIT_PER_CELSIUS;
}

/** A temperature, given in degrees Fahrenheit: "56 °F", "53.6 °F", "13.3 °C". */
export function formatTemperature(temperatureF: number, system: UnitSystem = 'us'): string {
  return system === 'us' ? `${short(temperatureF)} °F` : `${short(celsius(temperatureF))} °C`;
}

/**
 * How much one temperature is above another, given in degrees Fahrenheit, with its sign: "+5 °F", "-2.8 °C", "0 °F".
 */
export function formatTemperatureDifference(differenceF: number, system: UnitSystem = 'us'): string {
  const value = system === 'us' ? differenceF : differenceF / FAHRENHEIT_PER_CELSIUS;
  const figure = short(value);
  return `${value > 0 && figure !== '0' ? '+' : ''}${figure} °${system === 'us' ? 'F' : 'C'}`;
}

/** A count of degree days, given in F: "250 °F days", "139 °C days". */
export function formatDegreeDays(degreeDaysF: number, system: UnitSystem = 'us'): string {
  const value = system === 'us' ? degreeDaysF : degreeDaysF / FAHRENHEIT_PER_CELSIUS;
  return `${short(value)} °${system === 'us' ? 'F' : 'C'} days`;
}

function short(value: number): string {
  return withoutTrailingZeros(formatNumber(value, 1));
}

/**
 * A temperature in F from "56", "56 F", "-3 °F", "13.3 C".
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (not from -130 to 160 F).
 *
 * @param bare the scale of a bare number
 */
export function parseTemperature(text: string, where: string = quote(text), bare: 'F' | 'C' = 'F'): Result<number> {
  const read = readDegrees(text, where, bare, '56 F or 13.3 C');
  if (!read.ok) return read;
  const value = read.value.scale === 'C' ? fahrenheit(read.value.figure) : read.value.figure;
  if (value >= LEAST_F && value <= MOST_F) return ok(value);
  const detail = `${quote(text)} is no temperature of air or soil.`;
  return err('quantity-out-of-range', where, detail, `Enter a value from ${LEAST_F} to ${MOST_F} F.`);
}

/** How many degrees warmer or cooler, F, from "5", "-3 F", "+2 C"; errors as of temperatures, beyond 100 F either way. */
export function parseTemperatureDifference(
  text: string,
  where: string = quote(text),
  bare: 'F' | 'C' = 'F',
): Result<number> {
  const read = readDegrees(text, where, bare, '5 F or -3 F');
  if (!read.ok) return read;
  const value = read.value.figure * (read.value.scale === 'C' ? FAHRENHEIT_PER_CELSIUS : 1);
  if (Math.abs(value) <= MOST_DIFFERENCE_F) return ok(value);
  const detail = `${quote(text)} is too much for a difference of temperatures.`;
  return err(
    'quantity-out-of-range',
    where,
    detail,
    `Enter a value from -${MOST_DIFFERENCE_F} to ${MOST_DIFFERENCE_F} F.`,
  );
}

/** A count of degree days, F, from "250", "250 F", "139 C days". Errors: 'quantity-unreadable', 'quantity-out-of-range' below 0. */
export function parseDegreeDays(text: string, where: string = quote(text), bare: 'F' | 'C' = 'F'): Result<number> {
  const read = readDegrees(text.replace(/[\s-]*(?:degree)?[\s-]*days?$/i, ''), where, bare, '250 or 139 C days');
  if (!read.ok) return read;
  const value = read.value.figure * (read.value.scale === 'C' ? FAHRENHEIT_PER_CELSIUS : 1);
  if (value >= 0 && value <= 20_000) return ok(value);
  return err(
    'quantity-out-of-range',
    where,
    `${quote(text)} is no count of degree days.`,
    'Enter a value from 0 to 20,000.',
  );
}

type Degrees = { readonly figure: number; readonly scale: 'F' | 'C' };

function readDegrees(text: string, where: string, bare: 'F' | 'C', example: string): Result<Degrees> {
  const tidy = normalise(text);
  const hint = `Write it like ${example}.`;
  if (tidy === '') return err('quantity-unreadable', where, 'There is no figure here.', hint);
  if (/^[-+]? ?(?:\d*,\d{1,2}(?!\d)|0+,)/.test(tidy)) return decimalComma(where, text);
  const parts =
    /^([-+]?) ?((?:[1-9]\d{0,2}(?:,\d{3})+|\d+)(?:\.\d*)?|\.\d+) ?(?:°|deg(?:rees?)?\.?)? ?(f|c|fahrenheit|celsius)?$/.exec(
      tidy,
    );
  if (parts === null) return err('quantity-unreadable', where, `${quote(text)} cannot be read as degrees.`, hint);
  const [, sign, figure = '', scale] = parts;
  const value = Number(figure.replaceAll(',', '')) * (sign === '-' ? -1 : 1);
  return ok({ figure: value, scale: scale === undefined ? bare : scale.startsWith('c') ? 'C' : 'F' });
}
