import { err, ok, type Result } from '../../base/index.ts';
import {
  type ProductUnit,
  parseArea,
  parseCarrierRate,
  parseDuration,
  parseFlow,
  parseLength,
  parseProductAmount,
  parseProductRate,
  parseShare,
  parseSpeed,
  parseVolume,
  parseWeight,
  parseWidth,
} from '../../units/index.ts';
import type { Blank } from './sheet.ts';

const PER_ACRE = 43.56;
const PLAIN = /^(?:[1-9]\d{0,2}(?:,\d{3})+|\d*)(?:\.\d+)?$/;

/**
 * Reads what was typed for a blank, in the unit of the blank: a bare number is in it already, other units are converted.
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' with the name of the blank as their place.
 *
 * @param productUnit unit of amounts of the product
 */
export function readBlank(blank: Blank, text: string, productUnit: ProductUnit): Result<number> {
  const where = blank.name;
  const typed = text.trim();
  const isBare = PLAIN.test(typed);
  const bare = (unit: string): string => (isBare ? `${typed} ${unit}` : typed);
  switch (blank.reading) {
    case 'length':
      return parseLength(typed, { where });
    case 'width':
      return parseWidth(typed, { where });
    case 'area':
      return parseArea(typed, { where });
    case 'volume':
      return parseVolume(typed, { where });
    case 'weight':
      return parseWeight(typed, { where });
    case 'fluid':
      return parseProductAmount(typed, 'fl-oz', where);
    case 'flow':
      return parseFlow(typed, { where });
    case 'speed':
      return parseSpeed(typed, { where });
    case 'seconds':
      return parseDuration(stopwatch(bare('s')), { where });
    case 'minutes':
      return times(parseDuration(bare('min'), { where }), 1 / 60);
    case 'gal-per-1000':
      return parseCarrierRate(typed, { where });
    case 'gal-per-acre':
      return times(parseCarrierRate(bare('gpa'), { where }), PER_ACRE);
    case 'lb-per-1000':
      return parseProductRate(typed, 'lb', where);
    case 'lb-per-acre':
      return times(parseProductRate(bare('lb/acre'), 'lb', where), PER_ACRE);
    case 'product':
      return parseProductAmount(typed, productUnit, where);
    case 'share':
      return parseShare(typed, where);
    case 'number':
      return plainNumber(blank, typed);
  }
}

/** "1:18" or "1:18.4" on a stopwatch are minutes and seconds. */
function stopwatch(typed: string): string {
  const [, minutes, seconds] = /^(\d+):([0-5]\d(?:\.\d+)?)$/.exec(typed) ?? [];
  return minutes === undefined ? typed : `${minutes} min ${seconds} s`;
}

function times(value: Result<number>, factor: number): Result<number> {
  return value.ok ? ok(value.value * factor) : value;
}

/** "40", "40 psi", "1,200": a number with nothing after it but the unit that the blank has. */
function plainNumber(blank: Blank, typed: string): Result<number> {
  const figure = blank.unit !== '' && typed.endsWith(blank.unit) ? typed.slice(0, -blank.unit.length).trim() : typed;
  const value = Number(figure.replace(/^-/, '').replaceAll(',', ''));
  if (figure !== '' && PLAIN.test(figure.replace(/^-/, '')) && Number.isFinite(value)) {
    return ok(figure.startsWith('-') ? -value : value);
  }
  const detail = `"${typed.slice(0, 60)}" cannot be read as a number.`;
  return err(
    'quantity-unreadable',
    blank.name,
    detail,
    `Write it like this: 40${blank.unit === '' ? '' : ` ${blank.unit}`}.`,
  );
}

/** Several readings with commas, semicolons or spaces between them, each read as the blank asks. */
export function readList(blank: Blank, text: string, productUnit: ProductUnit): Result<readonly number[]> {
  const values: number[] = [];
  for (const part of listParts(text)) {
    const value = readBlank(blank, part, productUnit);
    if (!value.ok) return value;
    values.push(value.value);
  }
  if (values.length > 0) return ok(values);
  return err(
    'quantity-unreadable',
    blank.name,
    'There is no figure here.',
    'Write several with commas between: 77, 79, 78.',
  );
}

/** Splits at commas and semicolons; where there are only bare numbers, at spaces as well. */
function listParts(text: string): readonly string[] {
  const at = /^[\d.,;\s]*$/.test(text) ? /[,;\s]+/ : /[,;]+/;
  return text.split(at).filter((part) => part.trim() !== '');
}
