import { err, ok, type Result } from '../base/index.ts';
import type { GallonsPer1000SqFt, Quantity } from './brand.ts';
import { quantity } from './brand.ts';
import {
  RATE_AREA_SQFT,
  SQUARE_FEET_PER_ACRE,
  SQUARE_METRES_PER_HECTARE,
  SQUARE_METRES_PER_SQUARE_FOOT,
} from './constants.ts';
import { type ProductUnit, productTable } from './parse.ts';
import { normalise, quote, type ReadOptions, readQuantity } from './quantity-text.ts';
import type { UnitTable } from './unit-table.ts';
import { VOLUME_TABLE } from './unit-tables.ts';

const SQUARE_FEET_WORDS = '(?:sq\\.? ?ft\\.?|ft\\^?2|sf|square feet)';
const SQUARE_METRE_WORDS = '(?:m\\^?2|sq\\.? ?m\\.?|sqm)';

/** Endings that say on how much ground an amount is counted, and that ground in ft2. Tried in order. */
const GROUNDS: readonly { readonly expression: RegExp; readonly squareFeet: number }[] = [
  { expression: ending(`(?:1,?000|1 ?k|k) ?${SQUARE_FEET_WORDS}?`), squareFeet: RATE_AREA_SQFT },
  { expression: ending('(?:ac\\.?|acre|a)'), squareFeet: SQUARE_FEET_PER_ACRE },
  { expression: ending(`100 ?${SQUARE_METRE_WORDS}`), squareFeet: 100 / SQUARE_METRES_PER_SQUARE_FOOT },
  { expression: ending(SQUARE_METRE_WORDS), squareFeet: 1 / SQUARE_METRES_PER_SQUARE_FOOT },
  { expression: ending('(?:ha|hectare)'), squareFeet: SQUARE_METRES_PER_HECTARE / SQUARE_METRES_PER_SQUARE_FOOT },
];

function ending(ground: string): RegExp {
  return new RegExp(` ?(?:/|\\bper\\b|\\ban\\b|\\ba\\b) ?${ground}$`);
}

/** Most of anything on 1,000 ft2 that is read without asking: four times a heavy soak. Common practice, no source. */
const MOST_GAL_PER_1000 = 100;
const RATE_HINT = 'Write it like one of these: 0.33 gal/1000, 14.9 gpa, 1 L/100 m².';

/**
 * Carrier rate in gal per 1,000 ft2 from "0.33 gal/1000", "1/3" (per 1,000 ft2), "14.9 gpa", "20 gal/acre", "140 L/ha".
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (negative, or above 100 gal per 1,000 ft2).
 */
export function parseCarrierRate(text: string, options: ReadOptions = {}): Result<GallonsPer1000SqFt> {
  const rate = readRate(text, VOLUME_TABLE, options, RATE_HINT);
  if (!rate.ok) return rate;
  return checkRate(rate.value, options.most ?? MOST_GAL_PER_1000, text, options.where);
}

/**
 * Rate of a product in its own unit per 1,000 ft2 from "1.3 fl oz/1000", "1 qt/acre", "225 lb/acre", "5" (per 1,000 ft2).
 * Errors: 'quantity-unreadable', 'quantity-out-of-range'.
 */
export function parseProductRate(text: string, unit: ProductUnit, where?: string): Result<number> {
  const { table, perCanonical } = productTable(unit);
  const options = where === undefined ? {} : { where };
  const rate = readRate(
    text,
    table,
    options,
    `Write it like one of these: 5 ${unit === 'fl-oz' ? 'fl oz' : unit}/1000, 2 lb/acre.`,
  );
  return rate.ok ? ok(rate.value * perCanonical) : rate;
}

/** Reads "AMOUNT per GROUND"; the result is in canonical units of the amount per 1,000 ft2. */
function readRate(text: string, table: UnitTable, options: ReadOptions, hint: string): Result<number> {
  const tidy = normalise(text).replace(/ ?gpa$/, ' gal/ac');
  const ground = GROUNDS.find((each) => each.expression.test(tidy));
  const amountText = ground === undefined ? tidy : tidy.replace(ground.expression, '');
  const where = options.where ?? quote(text);
  const amount = readQuantity(amountText, { ...table, noun: 'rate' }, { where });
  if (!amount.ok) {
    const shown = amount.error.detail.replace(quote(amountText), quote(text));
    const keepsHint = amount.error.code === 'quantity-out-of-range' || amount.error.detail.includes('comma');
    return err(amount.error.code, where, shown, keepsHint ? amount.error.hint : hint);
  }
  return ok((amount.value * RATE_AREA_SQFT) / (ground?.squareFeet ?? RATE_AREA_SQFT));
}

function checkRate(value: number, most: number, text: string, where: string | undefined): Result<GallonsPer1000SqFt> {
  if (value <= most) return ok(quantity(value));
  const detail = `${quote(text)} is too much for 1,000 ft².`;
  return err('quantity-out-of-range', where ?? quote(text), detail, `Enter a value up to ${most} gal per 1,000 ft².`);
}

/** A share from 0 to 1 from "25 %", "0.25" or "1/4". A bare number above 1 is refused, since 25 could mean either. */
export function parseShare(text: string, where: string = quote(text)): Result<Quantity<'share'>> {
  const tidy = normalise(text);
  const percent = /( ?%| percent)$/.test(tidy);
  const figure = readPlain(tidy.replace(/( ?%| percent)$/, ''), 'share', where, '25 %, 0.25, 1/4');
  if (!figure.ok) return figure;
  const value = percent ? figure.value / 100 : figure.value;
  if (value <= 1) return ok(quantity(value));
  return err(
    'quantity-out-of-range',
    where,
    `${quote(text)} is more than the whole.`,
    'Enter 0 % to 100 %, with the % sign.',
  );
}

/** Steepest ground that is read, degrees. */
const MOST_SLOPE_DEG = 60;

/** Slope in degrees from "15", "15°", "15 deg", "27 %" (rise over run) or "1:4". Errors as everywhere here. */
export function parseSlope(text: string, where: string = quote(text)): Result<Quantity<'deg'>> {
  const tidy = normalise(text);
  const ratio = /^1 ?: ?([\d.]+)$/.exec(tidy);
  const grade = ratio !== null || /%$/.test(tidy);
  const figure = readPlain(
    ratio?.[1] ?? tidy.replace(/ ?(°|deg|degrees|degree|%)$/, ''),
    'slope',
    where,
    '15°, 27 %, 1:4',
  );
  if (!figure.ok) return figure;
  const rise = ratio === null ? figure.value / 100 : 1 / figure.value;
  const degrees = grade ? (Math.atan(rise) * 180) / Math.PI : figure.value;
  if (degrees <= MOST_SLOPE_DEG) return ok(quantity(degrees));
  return err(
    'quantity-out-of-range',
    where,
    `${quote(text)} is too steep for turf.`,
    'Enter 0 to 60 degrees, or a grade in %.',
  );
}

/**
 * Money in dollars from "$1,250.50", "45". Errors: 'quantity-unreadable', 'quantity-out-of-range' (below 0, over a
 * thousand million).
 */
export function parseMoney(text: string, where: string = quote(text)): Result<Quantity<'usd'>> {
  const figure = readPlain(normalise(text).replace(/^(-?) ?\$ ?/, '$1'), 'amount of money', where, '$45, 1,250.50');
  return figure.ok ? ok(quantity(figure.value)) : figure;
}

/** A number without unit, not negative. */
function readPlain(tidy: string, noun: string, where: string, examples: string): Result<number> {
  return readQuantity(tidy, { ...PLAIN_TABLE, noun, examples }, { where });
}

const PLAIN_UNIT = { name: 'one', factor: 1, spellings: [''] };
const PLAIN_TABLE: UnitTable = {
  noun: 'number',
  examples: '',
  units: new Map([['one', PLAIN_UNIT]]),
  bare: 'one',
  follower: {},
  least: 0,
  most: 1e9,
  mostInWords: '1,000,000,000',
  expression: /(?!)/y,
  spellings: new Map(),
};
