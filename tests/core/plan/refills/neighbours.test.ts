import { expect, it } from 'vitest';
import { neighboursOf } from '../../../../core/plan/refills/neighbours.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { randomProblem } from '../random-problem.ts';

function found(seed: number): { readonly search: RefillSearch; readonly events: readonly RefillEvent[] } | null {
  const problem = randomProblem(seed, { jobs: 3, stations: 1, materials: 4, thirst: 1.5, hours: 20, heavy: 0 });
  const search = new RefillSearch(problem, 0);
  const jobs = problem.jobs.map((_, job) => job);
  search.run(jobs, [0, 0, 0], jobs.length, { beam: 8, latestMs: Number.POSITIVE_INFINITY });
  const end = search.finals[0];
  return end === undefined ? null : { search, events: search.eventsOf(end) };
}

const keyOf = (events: readonly RefillEvent[]): string =>
  events.map((each) => `${each.position}/${each.done > 0}/${each.station}/${each.changes}`).join(' ');

it('neighbouring rows are in order, differ from each other and keep every change of material once', () => {
  let rows = 0;
  for (let seed = 1; seed <= 20; seed += 1) {
    const start = found(seed);
    if (start === null || start.events.length === 0) continue;
    const neighbours = neighboursOf(start.search.chain, start.events);
    expect(new Set(neighbours.map(keyOf)).size).toBe(neighbours.length);
    for (const events of neighbours) {
      rows += 1;
      const places = events.map((each) => each.position * 2 + (each.done > 0 ? 1 : 0));
      expect(places).toEqual(places.toSorted((left, right) => left - right));
      // A compartment is rinsed as often as its material changes along the row.
      for (let c = 0; c < start.search.model.compartments; c += 1) {
        const rinsed = events.filter((each) => ((each.changes >> c) & 1) === 1).length;
        const before = start.events.filter((each) => ((each.changes >> c) & 1) === 1).length;
        expect(rinsed, `seed ${seed}`).toBe(before);
      }
    }
  }
  expect(rows).toBeGreaterThan(300);
});

it('leave one refill out, and put one more in', () => {
  const start = found(1);
  if (start === null) throw new Error('the day of seed 1 can be done');
  const lengths = new Set(
    neighboursOf(start.search.chain, start.events).map((each) => each.length - start.events.length),
  );
  expect([...lengths].sort()).toEqual(expect.arrayContaining([0, 1]));
});
