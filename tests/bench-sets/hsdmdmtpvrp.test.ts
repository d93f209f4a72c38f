import { describe, expect, it } from 'vitest';
import { SETS } from '../bench/routing/sets/hsdmdmtpvrp.ts';
import {
  checkPeriodicFleet,
  type PeriodicFleetRoute,
  readPeriodicFleet,
} from '../bench/routing/sets/hsdmdmtpvrp-problem.ts';
import { NO_INSTANCES, publicInstances, STILL } from './shared.ts';

/** Three days, a small and a large type; customer 1 on days 1 and 3 by the large one, customers 2 and 3 on any one day. */
const TEXT = [
  '3 2 3 1 8.0',
  '1 1 10 10 5 0.5',
  '2 2 20 10 9 1',
  '1 3 4 15 0.5 2 1 5 1',
  '2 6 8 6 0.25 1 3 1 2 4 3',
  '3 0 10 6 0.25 1 3 1 2 4 3',
  '4 0 0',
].join('\n');
const SMALL = readPeriodicFleet(TEXT);
const ENTRY = { set: 'hsdmdmtpvrp', instance: 'by hand', file: '' };
const solve = (text: string, iterations: number) =>
  SETS[0]?.prepare(text, ENTRY).solve({ seed: 1, iterations, clock: STILL });
const LARGE: PeriodicFleetRoute = { day: 0, type: 1, depot: 0, trips: [[1]] };
const ROUTES: readonly PeriodicFleetRoute[] = [
  LARGE,
  { ...LARGE, day: 2 },
  { day: 1, type: 0, depot: 0, trips: [[2], [3]] },
];

describe('days of a mixed fleet', () => {
  it('cost days of use and distance', () => {
    expect(checkPeriodicFleet(SMALL, ROUTES)).toEqual({ cost: 2 * (9 + 10) + 5 + 0.5 * (20 + 20), faults: [] });
  });

  it('are at fault for loads, hours, types, days and vehicles', () => {
    const last = (change: Partial<PeriodicFleetRoute>) =>
      checkPeriodicFleet(SMALL, [...ROUTES.slice(0, 2), { ...(ROUTES[2] as PeriodicFleetRoute), ...change }]).faults;
    expect(last({ trips: [[2, 3]] })).toEqual(['a vehicle of type 1 on day 1 carries 12 of 10']);
    expect(last({ trips: [[2]] })).toEqual(['customer 3 is visited on days 0']);
    expect(last({ trips: [[2], [3], [2]] })).toContain('customer 2 twice on day 1');
    expect(last({ trips: [[2], [3], [7]] })).toContain('there is no customer 7');
    expect(last({ day: 3 })).toContain('there is no day 3');
    expect(last({ depot: 1 })).toContain('a vehicle of type 1 on day 1 at depot 2 does not exist');
    expect(checkPeriodicFleet({ ...SMALL, mostDuration: 4.4 }, ROUTES).faults).toHaveLength(1);
    const early = [LARGE, { ...LARGE, day: 1 }, ROUTES[2] as PeriodicFleetRoute];
    expect(checkPeriodicFleet(SMALL, early).faults).toEqual(['customer 1 is visited on days 11']);
    const small = [{ ...LARGE, type: 0 }, ...ROUTES.slice(1)];
    expect(checkPeriodicFleet(SMALL, small).faults).toContain('a vehicle of type 1 on day 0 may not serve 1');
    const two = [...ROUTES.slice(0, 2), ...[2, 3].map((each) => ({ day: 1, type: 0, depot: 0, trips: [[each]] }))];
    expect(checkPeriodicFleet(SMALL, two).faults).toEqual(['2 vehicles of type 1, 1 at most']);
  });

  it('are found: the best by hand, and without a fault for a published one', (context) => {
    const found = solve(TEXT, 200);
    expect(found?.faults).toEqual([]);
    expect(found?.cost).toBeCloseTo(2 * (9 + 10) + 5 + 0.5 * (20 + 20), 9);
    const [first] = publicInstances('hsdmdmtpvrp', /01$/) ?? [];
    if (first === undefined) return context.skip(NO_INSTANCES);
    expect(solve(first.text, 1500)?.faults).toEqual([]);
  });

  it('as published can be read: each set of days as long as the visits, and a type that can carry each demand', (context) => {
    const entries = publicInstances('hsdmdmtpvrp');
    if (entries === null) return context.skip(NO_INSTANCES);
    expect(entries).toHaveLength(10);
    for (const { text } of entries) {
      const problem = readPeriodicFleet(text);
      for (let customer = 1; customer <= problem.customers; customer += 1) {
        const lengths = problem.patterns[customer]?.map((days) => days.toString(2).replaceAll('0', '').length) ?? [];
        expect(new Set(lengths).size).toBe(1);
        const allowed = problem.types.filter((_, type) => ((problem.allowedTypes[customer] ?? 0) >> type) & 1);
        expect(Math.max(...allowed.map((type) => type.capacity))).toBeGreaterThanOrEqual(problem.demand[customer] ?? 0);
      }
    }
  });
});
