import type { Ledger } from './ledger.ts';

/** A figure that a plan states, what the re-run finds, and how far they may be apart. */
export type Figure = {
  readonly name: string;
  readonly stated: number;
  readonly found: number;
  readonly slack: number;
};

export function reportFigures(ledger: Ledger, where: string, figures: readonly Figure[]): void {
  for (const { name, stated, found, slack } of figures) {
    // Sums of many large figures lose some of their last digits.
    if (Math.abs(stated - found) > slack + Math.abs(found) * 1e-12) {
      ledger.add('figure-differs', where, `${name} is ${stated} in the plan, ${found} when worked out`);
    }
  }
}
