import { describe, expect, it } from 'vitest';
import type { Exchange, Offer } from '../../../../core/plan/search/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { randomProblem } from '../random-problem.ts';

const SHAPE = { jobs: 24, days: 3, stations: 1, zones: 1, largest: 12, hours: 7 } as const;
/** Of which two sevenths are the last leg, in which searches meet. */
const ITERATIONS = 9000;

/** An exchange that notes what it is offered, and answers as told. */
function notedExchange(answer: (own: Offer, meeting: number) => Offer | null) {
  const offers: Offer[] = [];
  let left = 0;
  const exchange: Exchange = {
    meet: (own) => {
      offers.push(own);
      return answer(own, offers.length);
    },
    leave: () => {
      left += 1;
    },
  };
  return { exchange, offers, left: () => left };
}

describe('a search beside others', () => {
  it('meets them at the same iterations every time, and leaves once', { timeout: 60_000 }, () => {
    const problem = randomProblem(2, SHAPE);
    const alone = solve(problem, { seed: 1, iterations: ITERATIONS });
    const runs = [1, 2].map(() => {
      const noted = notedExchange(() => null);
      const solution = solve(problem, { seed: 1, iterations: ITERATIONS }, { exchange: noted.exchange });
      expect(noted.left()).toBe(1);
      // 24 jobs: every 1,024 of the 2,572 iterations of the last leg.
      expect(noted.offers).toHaveLength(2);
      expect(solution).toEqual(alone);
      return noted.offers;
    });
    expect(runs[0]).toEqual(runs[1]);
  });

  it('goes on from what they have that is better', { timeout: 60_000 }, () => {
    const problem = randomProblem(2, SHAPE);
    const best: Offer[] = [];
    const known = notedExchange((own) => {
      best.push(own);
      return null;
    });
    solve(problem, { seed: 3, iterations: 4 * ITERATIONS }, { exchange: known.exchange });
    const offer = best.at(-1);
    if (offer === undefined) throw new Error('nothing was offered');
    // The second meeting is past the middle of the leg.
    const taking = notedExchange((_, meeting) => (meeting === 2 ? offer : null));
    const poor = solve(problem, { seed: 8, iterations: 6000 });
    const helped = solve(problem, { seed: 8, iterations: ITERATIONS }, { exchange: taking.exchange });
    expect(helped.unserved).toEqual([]);
    expect(helped.cost).toBeLessThanOrEqual(poor.cost);
    // Found by rule; placed and polished it is no dearer but for what the rule cannot see.
    expect(helped.cost).toBeLessThan(1.002 * offer.cost);
  });

  it('leaves also where there is nothing to search', () => {
    const noted = notedExchange(() => null);
    solve({ ...randomProblem(2, SHAPE), slots: [] }, { seed: 1, iterations: 10 }, { exchange: noted.exchange });
    expect(noted.left()).toBe(1);
  });
});
