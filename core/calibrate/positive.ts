import { err, ok, type Result } from '../base/index.ts';

/** A figure as typed at the calibration bench, with the name and unit a person knows it by. */
export type Figure = { readonly name: string; readonly value: number };

/**
 * Guards a bench calculation: every figure has to be a finite number above zero.
 *
 * @returns nothing to report, or the first figure that cannot be right
 */
export function allPositive(where: string, figures: readonly Figure[]): Result<null> {
  for (const figure of figures) {
    if (!(Number.isFinite(figure.value) && figure.value > 0)) {
      return err(
        'quantity-out-of-range',
        `${where}, ${figure.name}`,
        `${figure.name} is ${figure.value}, and has to be above zero.`,
        `Enter ${figure.name} as it was read at the bench.`,
      );
    }
  }
  return ok(null);
}
