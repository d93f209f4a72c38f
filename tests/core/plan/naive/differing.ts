import type { Fault } from './day-facts.ts';

export type Figure = readonly [name: string, stated: number, found: number, slack: number];

/** Figures that are further apart than they may be. Sums of many large figures lose some of their last digits. */
export function differing(where: string, figures: readonly Figure[]): readonly Fault[] {
  return figures
    .filter(([, stated, found, slack]) => Math.abs(stated - found) > slack + Math.abs(found) * 1e-12)
    .map(([name, stated, found]) => ({ code: 'figure-differs', where, words: `${name}: ${stated}, not ${found}` }));
}
