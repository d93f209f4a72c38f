import { err, ok, type Result } from '../../base/index.ts';
import type { Blank, Entries, Sheet, Values } from './sheet.ts';
import { shown, shownWithUnit } from './shown.ts';

function blankOf(sheet: Sheet, name: string): Blank | undefined {
  return sheet.blanks.find((each) => each.name === name);
}

/** Unit of a name's value as answers carry it. */
export function unitOf(sheet: Sheet, name: string, entries: Entries): string {
  return (blankOf(sheet, name)?.unit ?? '').replace('product', entries.productUnit ?? 'fl-oz');
}

/** Every value has to be above zero and no larger than its blank allows: 'quantity-out-of-range' for the first that is not. */
export function checkRanges(sheet: Sheet, values: Values, entries: Entries): Result<null> {
  for (const [name, value] of Object.entries(values)) {
    const { most = Number.MAX_VALUE, mayBeZero = true } = blankOf(sheet, name) ?? {};
    const readings = entries.lists[name] ?? [value];
    if ([value, ...readings].every((each) => (each > 0 || (mayBeZero && each === 0)) && each <= most)) continue;
    const isGiven = entries.values[name] !== undefined;
    const figure = shownWithUnit(value, unitOf(sheet, name, entries));
    const detail = `${name} ${isGiven ? 'is' : 'would come to'} ${figure}, which cannot be right.`;
    return err(
      'quantity-out-of-range',
      name,
      detail,
      `It has to be above 0 and at most ${shown(most)}; check the figures.`,
    );
  }
  return ok(null);
}
