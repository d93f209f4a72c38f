import { describe, expect, it } from 'vitest';
import { BAD_BOOKS, badText, planText } from './bad-books.ts';

describe('books that make no sense', () => {
  it.each(BAD_BOOKS)('$name', { timeout: 120_000 }, (bad) => {
    // Where nothing can be placed there is no search, however long it might take.
    const iterations = bad.ends === 'all' ? 1_000_000_000 : 60;
    const outcome = planText(badText(bad), { seed: 1, iterations });
    if (typeof bad.ends !== 'string') {
      expect(bad.ends.errors).toContain('code' in outcome ? outcome.code : 'a plan');
      return;
    }
    if ('code' in outcome) throw new Error(`refused with ${outcome.code}`);
    const { unplaced, totals } = outcome.plan;
    for (const each of unplaced) {
      expect(each.reasons.length).toBeGreaterThan(0);
      for (const reason of each.reasons) expect(reason.words).not.toBe('');
    }
    if (bad.ends === 'all') expect([totals.stops, outcome.plan.iterations]).toEqual([0, 0]);
    else expect(totals.stops).toBeGreaterThan(0);
    if (bad.ends === 'none') expect(unplaced).toEqual([]);
    else expect(unplaced.length).toBeGreaterThan(0);
  });
});
