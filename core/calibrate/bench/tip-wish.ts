import { type Err, err, ok, type Result } from '../../base/index.ts';
import { per1000SqFt } from '../boom.ts';
import type { TipWish } from '../tip-choice.ts';
import { TIP_SIZES, type TipSize } from '../tips.ts';
import type { Entries, Sheet, Values } from './sheet.ts';
import { tipOfSize } from './tip-sheet.ts';

/** Speeds are looked at every half mile an hour where nothing else is said. Ours. */
const STEP_MPH = 0.5;

const NAMES = [
  ...['want-gal-per-1000', 'want-gpa', 'spacing-in', 'psi', 'least-psi', 'most-psi'],
  ...['mph', 'least-mph', 'most-mph', 'step-mph'],
];

/** Whether a rate is wanted of the sheet of the tip, which makes it a choice of tips. */
export function isTipWish({ kind }: Sheet, values: Values): boolean {
  if (kind !== 'tip') return false;
  return values['want-gal-per-1000'] !== undefined || values['want-gpa'] !== undefined;
}

/**
 * The wish behind what was filled in. A pressure or a speed may be one figure or a range.
 *
 * @param sizes numbers of ISO 10625 to choose from; all of them where there are none
 * @returns request-invalid for figures that are missing, doubled, or not of the wish
 */
export function tipWish({ values }: Entries, sizes: readonly string[]): Result<TipWish> {
  const other = Object.keys(values).find((name) => !NAMES.includes(name));
  if (other !== undefined) return refused(other, `${other} is worked out where a rate is wanted.`, 'Leave it out.');
  const gal = values['want-gal-per-1000'];
  const gpa = values['want-gpa'];
  if (gal !== undefined && gpa !== undefined)
    return refused('want-gpa', 'The wanted rate is given twice.', 'Give one.');
  const spacingIn = values['spacing-in'];
  if (spacingIn === undefined) return refused('spacing-in', 'spacing-in is missing.', 'Give the spacing of the tips.');
  const psi = range(values, 'psi');
  if (!psi.ok) return psi;
  const mph = range(values, 'mph');
  if (!mph.ok) return mph;
  const tips = tipsOf(sizes);
  if (!tips.ok) return tips;
  return ok({
    wantedGalPer1000SqFt: gal ?? per1000SqFt(gpa ?? 0),
    spacingIn,
    tips: tips.value,
    leastPsi: psi.value.least,
    mostPsi: psi.value.most,
    leastMph: mph.value.least,
    mostMph: mph.value.most,
    stepMph: values['step-mph'] ?? STEP_MPH,
  });
}

function refused(where: string, detail: string, hint: string): Err {
  return err('request-invalid', where, detail, hint);
}

function range(values: Values, name: string): Result<{ readonly least: number; readonly most: number }> {
  const one = values[name];
  const least = values[`least-${name}`];
  const most = values[`most-${name}`];
  if (one !== undefined && least === undefined && most === undefined) return ok({ least: one, most: one });
  if (one === undefined && least !== undefined && most !== undefined) return ok({ least, most });
  const detail = `The choice of tips needs ${name}, or least-${name} and most-${name}.`;
  return refused(name, detail, 'Give one or the other.');
}

function tipsOf(sizes: readonly string[]): Result<readonly TipSize[]> {
  if (sizes.length === 0) return ok(TIP_SIZES);
  const tips: TipSize[] = [];
  for (const size of sizes) {
    const tip = tipOfSize(size);
    if (!tip.ok) return tip;
    tips.push(tip.value);
  }
  return ok(tips);
}
