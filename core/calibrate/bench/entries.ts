import { ok, type Result } from '../../base/index.ts';
import type { ProductUnit } from '../../units/index.ts';
import { readBlank, readList } from './read.ts';
import type { Blank, Entries, Sheet } from './sheet.ts';

/** Choices of a sheet that are no figures. */
export type EntryChoices = { readonly productUnit?: ProductUnit; readonly tipSize?: string };

/** The blanks of a sheet that may be filled in; the others are only worked out. */
export function typedBlanks({ blanks }: Sheet): readonly Blank[] {
  return blanks.filter((each) => !each.onlyFound);
}

/**
 * Reads what was typed into the blanks of a sheet, by their names, in the units of the blanks. Blanks without text are left out;
 * of several readings the mean counts.
 * Errors: those of `readBlank`, with the name of the blank as their place.
 */
export function readEntries(
  sheet: Sheet,
  typed: Readonly<Record<string, string | undefined>>,
  { productUnit = 'fl-oz', tipSize }: EntryChoices = {},
): Result<Entries> {
  const values: Record<string, number> = {};
  const lists: Record<string, readonly number[]> = {};
  for (const blank of typedBlanks(sheet)) {
    const text = typed[blank.name];
    if (text === undefined) continue;
    const read = blank.many ? readList(blank, text, productUnit) : asList(readBlank(blank, text, productUnit));
    if (!read.ok) return read;
    values[blank.name] = read.value.reduce((sum, each) => sum + each, 0) / read.value.length;
    if (blank.many) lists[blank.name] = read.value;
  }
  return ok({ values, lists, productUnit, ...(tipSize === undefined ? {} : { tipSize }) });
}

const asList = (value: Result<number>): Result<readonly number[]> => (value.ok ? ok([value.value]) : value);
