import { type BadBook, badText, planText } from '../core/plan/bad-books.ts';

/** How long each of the books that make no sense takes from its text to the answer: rows of name, processor seconds, how it ended. */
export function timeBadBooks(
  books: readonly BadBook[],
  iterations: number,
  processorSeconds: () => number,
): readonly string[] {
  // The first one is the book that they are made of: whatever a cold start costs is in it, and not in the others.
  const sound: BadBook = { name: 'the book as it is', spoil: () => undefined, ends: 'none' };
  return [sound, ...books].map((bad) => {
    const text = badText(bad);
    const startSec = processorSeconds();
    const outcome = planText(text, { seed: 1, iterations });
    const spent = processorSeconds() - startSec;
    const ended =
      'code' in outcome
        ? `refused: ${outcome.code}`
        : `${outcome.plan.totals.stops} stops, ${outcome.plan.unplaced.length} pieces of work left out`;
    return [bad.name, spent.toFixed(2), ended].join(',');
  });
}
