import { describe, expect, it } from 'vitest';
import { SETS } from '../bench/routing/sets/mdvrpi.ts';
import { checkReplenishment, readReplenishment } from '../bench/routing/sets/mdvrpi-problem.ts';
import { NO_INSTANCES, publicInstances, STILL } from './shared.ts';

/** Base at 0, depot at 10, customers at 5, 11 and 12 of a line; a load takes two of three. */
const TEXT = JSON.stringify({
  vehicles: 1,
  maxRotationDuration: 40,
  capacity: 2,
  dockingTime: 3,
  base: [0, 0],
  intermediate: [[10, 0]],
  customers: [5, 11, 12].map((x) => ({ x, y: 0, service: 2, demand: 1 })),
});
const SMALL = readReplenishment(TEXT);
const ENTRY = { set: 'mdvrpi', instance: 'by hand', file: '' };
const solve = (text: string, iterations: number) =>
  SETS[0]?.prepare(text, ENTRY).solve({ seed: 1, iterations, clock: STILL });

describe('routes with replenishment', () => {
  it('cost their travel, and refills take their time', () => {
    expect(checkReplenishment(SMALL, [[1, 4, 2, 3]])).toEqual({ cost: 24, faults: [] });
    expect(checkReplenishment({ ...SMALL, mostDuration: 33 }, [[1, 4, 2, 3]]).faults).toEqual([]);
    expect(checkReplenishment({ ...SMALL, mostDuration: 32.9 }, [[1, 4, 2, 3]]).faults).toHaveLength(1);
  });

  it('are at fault for a load too large, a customer left out or visited twice, too many vehicles, and no such place', () => {
    expect(checkReplenishment(SMALL, [[1, 2, 3]]).faults).toEqual(['route 1 carries 3 of 2 at 3']);
    expect(checkReplenishment(SMALL, [[2, 3]]).faults).toEqual(['customer 1 is visited 0 times']);
    expect(checkReplenishment(SMALL, [[1, 4, 1, 0, 2, 4, 3]]).faults).toContain('customer 1 is visited 2 times');
    expect(checkReplenishment(SMALL, [[1], [2, 3]]).faults).toEqual(['2 routes for 1 vehicles']);
    expect(checkReplenishment(SMALL, [[1, 4, 2, 3, 9]]).faults).toEqual(['there is no place 9']);
  });

  it('are found: the best by hand, and near what is stored of a published one', (context) => {
    expect(solve(TEXT, 100)).toMatchObject({ cost: 24, faults: [] });
    const [c2] = publicInstances('mdvrpi', /^c2$/) ?? [];
    if (c2 === undefined) return context.skip(NO_INSTANCES);
    const found = solve(c2.text, 3000);
    expect(found?.faults).toEqual([]);
    expect(found?.cost).toBeLessThan(1.04 * (c2.entry.bestKnown ?? 0));
  });

  it('as stored cost what is stored', (context) => {
    const entries = publicInstances('mdvrpi');
    if (entries === null) return context.skip(NO_INSTANCES);
    expect(entries).toHaveLength(5);
    for (const { text, stored: routes, entry } of entries) {
      const problem = readReplenishment(text);
      const stored = (JSON.parse(routes) as { routes: string[][] }).routes.map((route) =>
        route.slice(1, -1).map((name) => placeOf(problem.customers, name)),
      );
      const { cost, faults } = checkReplenishment(problem, stored);
      expect(faults).toEqual([]);
      expect(Math.abs(cost - (entry.bestKnown ?? 0))).toBeLessThan(0.02);
    }
  });
});

/** Customers are written from C0 on; D0 and D1 are both the base, D2 is the first other depot. */
function placeOf(customers: number, name: string): number {
  const number = Number(name.slice(1));
  if (name.startsWith('C')) return number + 1;
  return number < 2 ? 0 : customers + number - 1;
}
