import { err, ok, type Result } from '../../../../core/base/index.ts';
import type { Calibration } from '../../../../core/book/index.ts';
import {
  type BenchResult,
  type Calibrated,
  type EntryChoices,
  isTipWish,
  readEntries,
  SHEETS,
  type Sheet,
  SOURCES,
  type TipCombination,
  tipCombinations,
  tipWish,
  workSheet,
} from '../../../../core/calibrate/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';

/** What stands in the form: texts by the names of the blanks, and the choices that are no figures. */
export type BenchForm = { readonly typed: Readonly<Record<string, string>>; readonly choices: EntryChoices };

export const EMPTY_FORM: BenchForm = { typed: {}, choices: {} };

/** A form worked out. `figures` are all that is known, given and found, by name. */
export type Worked = BenchResult & {
  readonly figures: Readonly<Record<string, number>>;
  readonly combinations: readonly TipCombination[];
};

/** Combinations of tip, pressure and speed that are listed. */
const MOST_COMBINATIONS = 12;

/** Calculations by what they are for. */
const FOR_PURPOSE = {
  spray: ['boom', 'tip', 'speed', 'catch', 'mix', 'capacity'],
  spread: ['spreader', 'granular', 'speed', 'capacity'],
  seed: ['spreader', 'granular', 'speed', 'capacity'],
  aerate: ['aerator', 'speed', 'capacity'],
  hose: ['gun', 'mix'],
  backpack: ['gun', 'mix'],
  'hand-spreader': ['spreader', 'granular'],
} as const;

/** The calculations that make sense for a head or a hand method, the usual one first. */
export function sheetsFor(owner: Calibrated): readonly Sheet[] {
  const kinds: readonly string[] = FOR_PURPOSE['purpose' in owner ? owner.purpose : owner.what];
  return kinds.flatMap((kind) => SHEETS.filter((sheet) => sheet.kind === kind));
}

/** Works the form out; null while nothing is filled in. */
export function work(sheet: Sheet, { typed, choices }: BenchForm): Result<Worked> | null {
  const filled = Object.fromEntries(Object.entries(typed).filter(([, text]) => text.trim() !== ''));
  if (Object.keys(filled).length === 0 && choices.tipSize === undefined) return null;
  const entries = readEntries(sheet, filled, choices);
  if (!entries.ok) return entries;
  if (isTipWish(sheet, entries.value.values)) {
    const wish = tipWish(entries.value, []);
    if (!wish.ok) return wish;
    const found = tipCombinations(wish.value);
    if (!found.ok) return found;
    const combinations = found.value.slice(0, MOST_COMBINATIONS);
    if (combinations.length === 0) {
      return err('request-invalid', 'tip', benchWords.state.noTip, benchWords.state.noTipAdvice);
    }
    const source = [SOURCES.cornellGuide, SOURCES.coreManual, SOURCES.arizona].join('; ');
    return ok({ answers: [], working: [], source, figures: entries.value.values, combinations });
  }
  const result = workSheet(sheet, entries.value);
  if (!result.ok) return result;
  const found = Object.fromEntries(result.value.answers.map(({ name, value }) => [name, value]));
  return ok({ ...result.value, figures: { ...entries.value.values, ...found }, combinations: [] });
}

/** The record of a form that was worked out. */
export function recordOf(
  sheet: Sheet,
  { typed, choices }: BenchForm,
  worked: Worked,
  made: Pick<Calibration, 'id' | 'on' | 'by' | 'setting'>,
): Calibration {
  const given = Object.entries(typed)
    .filter(([, text]) => text.trim() !== '')
    .map(([name, text]) => ({ name, text: text.trim() }));
  const size = choices.tipSize === undefined ? [] : [{ name: 'size', text: choices.tipSize }];
  const found = worked.answers.map(({ name, value, unit }) => ({ name, value, unit }));
  return { ...made, what: sheet.kind, given: [...size, ...given], found, source: worked.source };
}
