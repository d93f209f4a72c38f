import { type Err, err, ok, type Result } from '../base/index.ts';
import { formatNumber, withoutTrailingZeros } from './format-number.ts';
import { matchAt, readNumberAt } from './number-text.ts';
import { squeeze, type UnitEntry, type UnitTable } from './unit-table.ts';

/** How a text is read. `where` names the field in the error; the text itself is named when it is absent. */
export type ReadOptions = { readonly where?: string; readonly least?: number; readonly most?: number };

/**
 * Reads what a person types for a quantity: one number with or without a unit, or several parts from the larger unit to
 * the smaller ("3 ft 6 in").
 *
 * Errors: 'quantity-unreadable' (with a hint that shows how to write it), 'quantity-out-of-range' for negative or absurd
 * values and for values outside the limits of the options.
 *
 * @returns the value in the canonical unit of the table
 */
export function readQuantity(text: string, table: UnitTable, options: ReadOptions = {}): Result<number> {
  const tidy = normalise(text);
  const where = options.where ?? quote(text);
  if (tidy === '') return err('quantity-unreadable', where, `There is no ${table.noun} here.`, writeItLike(table));
  const negative = tidy.startsWith('-');
  const total = readParts(negative ? tidy.slice(1).trimStart() : tidy.replace(/^\+\s*/, ''), text, table, where);
  if (!total.ok) return total;
  return within(negative ? -total.value : total.value, text, table, where, options);
}

/** Lower case, ordinary spaces and marks: "900 M²" -> "900 m^2", "3’ 6”" -> `3' 6"`. */
export function normalise(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\u2212\u2010-\u2014]/g, '-')
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/\u2044/g, '/')
    .replace(/\u00b2/g, '^2')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The typed text in quotation marks, cut to a length that fits a message. */
export function quote(text: string): string {
  const flat = text.replace(/\s+/g, ' ').trim();
  return `"${flat.length > 60 ? `${flat.slice(0, 57)}...` : flat}"`;
}

/** The refusal of a decimal comma. */
export function decimalComma(where: string, text: string): Err {
  const detail = `${quote(text)} has a comma that does not separate thousands.`;
  return err(
    'quantity-unreadable',
    where,
    detail,
    'Write decimals with a point: 1.5. A comma only separates thousands: 12,500.',
  );
}

type Part = { readonly value: number; readonly unit: UnitEntry; readonly end: number };

function readParts(tidy: string, text: string, table: UnitTable, where: string): Result<number> {
  let total = 0;
  let previous: UnitEntry | undefined;
  let position = 0;
  while (position < tidy.length) {
    const part = readPart(tidy, position, text, table, where, previous);
    if (!part.ok) return part;
    if (previous !== undefined && part.value.unit.factor >= previous.factor) return unreadable(text, table, where);
    total += part.value.value * part.value.unit.factor;
    previous = part.value.unit;
    position = part.value.end;
    while (tidy[position] === ' ') position += 1;
  }
  return ok(total);
}

function readPart(
  tidy: string,
  start: number,
  text: string,
  table: UnitTable,
  where: string,
  previous: UnitEntry | undefined,
): Result<Part> {
  const number = readNumberAt(tidy, start);
  if (number.kind === 'decimal-comma') return decimalComma(where, text);
  if (number.kind !== 'number') return unreadable(text, table, where);
  const found = matchAt(table.expression, tidy, number.end);
  if (found !== null) {
    const unit = table.spellings.get(squeeze(found[1] ?? ''));
    if (unit !== undefined) return ok({ value: number.value, unit, end: number.end + found[0].length });
  }
  const bare = number.end === tidy.length ? bareUnit(tidy, start, table, previous) : undefined;
  if (bare === undefined) return unreadable(text, table, where);
  return ok({ value: number.value, unit: bare, end: number.end });
}

/** The unit of a number that stands last and alone. "900 ft2" in a field for lengths must not become 900 ft 2 in. */
function bareUnit(
  tidy: string,
  start: number,
  table: UnitTable,
  previous: UnitEntry | undefined,
): UnitEntry | undefined {
  if (previous === undefined) return table.units.get(table.bare);
  if (previous.name === 'ft' && /[a-z]/.test(tidy[start - 1] ?? '')) return undefined;
  return table.units.get(table.follower[previous.name] ?? '');
}

function unreadable(text: string, table: UnitTable, where: string): Err {
  const fluid = table.noun === 'weight' && /fl\.?\s*oz|fluid/i.test(text);
  const detail = fluid
    ? `${quote(text)} is a volume, not a weight: a fluid ounce is not a dry ounce.`
    : `${quote(text)} cannot be read as ${article(table.noun)} ${table.noun}.`;
  return err('quantity-unreadable', where, detail, writeItLike(table));
}

function within(value: number, text: string, table: UnitTable, where: string, options: ReadOptions): Result<number> {
  const least = options.least ?? table.least;
  const most = options.most ?? table.most;
  if (value >= least && value <= most && Number.isFinite(value)) return ok(value);
  const detail =
    value < 0 && least >= 0
      ? `${quote(text)} is negative.`
      : `${quote(text)} is ${value < least ? 'too small' : 'too large'} for ${article(table.noun)} ${table.noun} here.`;
  const unit = [...table.units.values()].find((each) => each.factor === 1)?.spellings[0] ?? '';
  const top = options.most === undefined ? table.mostInWords : `${withoutTrailingZeros(formatNumber(most, 2))} ${unit}`;
  return err(
    'quantity-out-of-range',
    where,
    detail,
    `Enter a value from ${withoutTrailingZeros(formatNumber(least, 2))} to ${top}.`,
  );
}

function writeItLike(table: UnitTable): string {
  return `Write it like one of these: ${table.examples}.`;
}

function article(noun: string): string {
  return /^[aeiou]/.test(noun) ? 'an' : 'a';
}
