import { describe, expect, it } from 'vitest';
import { BAD_BOOKS, badText, planText } from './bad-books.ts';

describe('books that make no sense', () => {
  it.each(BAD_BOOKS)('$name', { timeout: 60_000 }, (bad) => {
    const outcome = planText(badText(bad), { seed: 1, iterations: 60 });
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
    if (bad.ends === 'all') expect(totals.stops).toBe(0);
    else expect(totals.stops).toBeGreaterThan(0);
    if (bad.ends === 'none') expect(unplaced).toEqual([]);
    else expect(unplaced.length).toBeGreaterThan(0);
  });

  it('end at once, without a search, where nothing can be placed, however long the search might take', () => {
    for (const bad of BAD_BOOKS.filter((each) => each.ends === 'all')) {
      const outcome = planText(badText(bad), { seed: 1, iterations: 1_000_000_000 });
      expect('plan' in outcome ? outcome.plan.iterations : -1, bad.name).toBe(0);
    }
  });
});
