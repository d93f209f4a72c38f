import { err, ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { AttributeValue, SourceFeature } from '../formats/index.ts';
import { parseArea, parseLength, parseSlope, parseWidth, type ReadOptions } from '../units/index.ts';
import type { FieldUnit, FieldUses, Meaning } from './mapping.ts';

/** Longest texts that a book takes. */
const LONGEST: Readonly<Record<'id' | 'name' | 'text', number>> = { id: 120, name: 200, text: 4000 };

/** A field as text without outer spaces; null where it is empty or not chosen. */
export function textOf(
  feature: SourceFeature,
  fields: FieldUses,
  meaning: Meaning,
  most: keyof typeof LONGEST = 'text',
): string | null {
  const use = fields[meaning];
  if (use === undefined) return null;
  return plainText(feature.attributes[use.field])?.slice(0, LONGEST[most]) ?? null;
}

export function plainText(value: AttributeValue | undefined): string | null {
  if (value === null || value === undefined) return null;
  const text = String(value).trim();
  return text === '' ? null : text;
}

const READERS: Readonly<Partial<Record<Meaning, (text: string, options?: ReadOptions) => Result<number>>>> = {
  area: parseArea,
  gateWidth: parseWidth,
  keepAway: parseLength,
  slope: (text) => parseSlope(text),
};
const UNIT_WORDS: Readonly<Record<FieldUnit, string>> = {
  ft2: 'sq ft',
  ac: 'ac',
  m2: 'm2',
  ha: 'ha',
  in: 'in',
  ft: 'ft',
  cm: 'cm',
  m: 'm',
  deg: 'deg',
  '%': '%',
};

/**
 * A field as a quantity in the unit that books use (ft2, in, ft, degrees); null where it is empty. A unit written with the
 * number goes before the unit of the field. Errors: those of the readers of core/units.
 */
export function quantityOf(feature: SourceFeature, fields: FieldUses, meaning: Meaning): Result<number | null> {
  const use = fields[meaning];
  const text = use === undefined ? null : plainText(feature.attributes[use.field]);
  const read = READERS[meaning];
  if (use === undefined || text === null || read === undefined) return ok(null);
  const isBare = /^[+-]?[\d.,\s/]+(?:e[+-]?\d+)?$/i.test(text);
  const plain = isBare && /e/i.test(text) ? String(Number(text)) : text;
  const result = read(isBare && use.unit !== null ? `${plain} ${UNIT_WORDS[use.unit]}` : plain);
  if (result.ok) return result;
  const { code, where, detail, hint } = result.error;
  return err(code, where, `Field ${use.field}: ${detail}`, hint);
}

/** A position written as "[-83, 40]", "-83 40" or "-83, 40": longitude, latitude in degrees. Null for anything else. */
export function positionOf(text: string | null): Position | null {
  if (text === null) return null;
  const parts = text
    .replace(/[[\]()]/g, ' ')
    .trim()
    .split(/[\s,;]+/);
  const [longitude, latitude] = parts.map(Number);
  if (longitude === undefined || latitude === undefined) return null;
  return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90 ? [longitude, latitude] : null;
}

/** Ids written as one, as a JSON list, or separated by commas; null where there are none. */
export function idsOf(text: string | null): readonly string[] | null {
  if (text === null) return null;
  const parts = text.replace(/^\[|\]$/g, '').split(',');
  const ids = parts.map((each) => each.trim().replace(/^"|"$/g, '')).filter((each) => each !== '');
  return ids.length === 0 ? null : ids;
}
