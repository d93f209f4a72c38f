import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RefillPlacer } from '../../../../core/plan/refills/index.ts';
import { FAMILIES, type Family, shuffledVisits } from '../oracle/families.ts';
import { randomProblem } from '../random-problem.ts';
import { replay } from './replay.ts';
import { linesOf } from './words.ts';

/** What brute force has found for the same days; ../oracle/refills.test.ts holds the list against it. */
const proved = JSON.parse(readFileSync(new URL('../oracle/proved-costs.json', import.meta.url), 'utf8')) as Record<
  string,
  readonly (number | null)[]
>;
/** Days of each family: few, because each change of the sources is held against them (`npm run test:mutation`). */
const DAYS = 5;
/** Further days, on which one refill is better elsewhere than where the labels put it. */
const FURTHER: Readonly<Record<string, readonly number[]>> = {
  windows: [23, 35, 39],
  'two persons, windows': [17],
};

/** Days with more in them at once than brute force can do: they are held against a replay alone. */
const BUSY: Family = {
  name: 'all at once',
  shape: {
    jobs: 2,
    zones: 3,
    stations: 2,
    materials: 4,
    windows: 0.3,
    breaks: 0.5,
    bagsAboard: 1,
    seconds: 0.4,
    thirst: 1.5,
  },
  seeds: [1, 12],
};
const LARGER: readonly Family[] = [
  {
    name: 'bags and payload',
    shape: { jobs: 3, stations: 2, materials: 4, heavy: 1, bagsAboard: 0.7, thirst: 1.5, hours: 14 },
    seeds: [1, 12],
  },
  {
    name: 'long rows',
    shape: { jobs: 12, stations: 2, thirst: 1.3, hours: 30, breaks: 1, noNurse: 0.5 },
    seeds: [2, 3],
  },
];

/**
 * The refills of small days as they are decided, in words. The costs are those of brute force, and what is decided holds when it is
 * played again; of several ways that cost the same the one that is taken is written down. The figures of pruning beside them say how
 * many refills were tried. After a change `npx vitest -u` writes the lists anew: to be read again.
 */
describe.each([BUSY, ...FAMILIES.toReversed(), ...LARGER])(
  'decisions on days of $name',
  ({ name, shape, seeds: [first, last], cheaper }) => {
    it('are these', async () => {
      const lines: string[] = [];
      const some = Array.from({ length: Math.min(DAYS, last - first + 1) }, (_, k) => first + k);
      for (const seed of [...some, ...(FURTHER[name] ?? [])]) {
        const problem = randomProblem(seed, shape);
        const visits = shuffledVisits(problem, seed);
        const placement = new RefillPlacer(problem).place(0, visits);
        const cost = placement.kind === 'placed' ? placement.outcome.cost : Number.POSITIVE_INFINITY;
        const best = proved[name]?.[seed - first];
        if (best !== undefined && cheaper?.includes(seed) !== true)
          expect(cost === (best ?? Number.POSITIVE_INFINITY) || Math.abs(cost - (best ?? 0)) < 1, `seed ${seed}`).toBe(
            true,
          );
        if (placement.kind === 'placed') expect(replay(problem, placement.outcome), `seed ${seed}`).toEqual([]);
        lines.push(`# seed ${seed}`, ...linesOf(problem, visits, placement), '');
      }
      await expect(lines.join('\n')).toMatchFileSnapshot(`decisions/${name.replaceAll(/[^a-z]+/g, '-')}.txt`);
    });
  },
);
