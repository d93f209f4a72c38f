import { describe, expect, it } from 'vitest';
import { SETS } from '../bench/routing/sets/pvrpif.ts';
import {
  type CollectionRoute,
  checkCollection,
  evenlySpaced,
  readCollection,
} from '../bench/routing/sets/pvrpif-problem.ts';
import { NO_INSTANCES, publicInstances, STILL } from './shared.ts';

/** A line: depot at 0, customers at 2 and 4, a facility at 5; a load takes one customer. */
const PLACES = [0, 2, 4, 5];
const TEXT = JSON.stringify({
  info: { numVehicles: 1, maxDuration: 15, maxCapacity: 10, planningHorizon: 4 },
  features: PLACES.map((_, id) => ({
    properties: {
      id,
      type: id === 0 ? 'depot' : id === 3 ? 'intermediateFacility' : 'customer',
      frequency: [0, 4, 2, 0][id],
      demand: id === 1 || id === 2 ? 6 : 0,
      service: id === 1 || id === 2 ? 1 : 0,
    },
  })),
  duration: PLACES.map((from) => PLACES.map((to) => Math.abs(from - to))),
});
const SMALL = readCollection(TEXT);
const ENTRY = { set: 'pvrpif', instance: 'by hand', file: '' };
const solve = (text: string, iterations: number) =>
  SETS[0]?.prepare(text, ENTRY).solve({ seed: 1, iterations, clock: STILL });
const ROUTES: readonly CollectionRoute[] = [
  { day: 0, stops: [1, 3, 2, 3] },
  { day: 1, stops: [1, 3] },
  { day: 2, stops: [1, 3, 2, 3] },
  { day: 3, stops: [1, 3] },
];

describe('days of collection', () => {
  it('cost their travel', () => {
    expect(checkCollection(SMALL, ROUTES)).toEqual({ cost: 12 + 10 + 12 + 10, faults: [] });
  });

  it('are at fault for loads, length, days and vehicles', () => {
    const first = (...stops: number[]) => checkCollection(SMALL, [{ day: 0, stops }, ...ROUTES.slice(1)]).faults;
    expect(first(1, 2, 3)).toEqual(['a route of day 0 carries 12 of 10 at 2']);
    expect(first(1, 3, 2)).toContain('a route of day 0 comes home with a load of 6');
    expect(first(1, 3)).toEqual(['customer 2 is visited on days 2']);
    expect(first(1, 3, 2, 3, 9)).toContain('there is no place 9');
    expect(checkCollection({ ...SMALL, mostDuration: 13 }, ROUTES).faults).toHaveLength(2);
    expect(checkCollection(SMALL, [...ROUTES, { day: 3, stops: [3] }]).faults).toHaveLength(1);
    const moved = [...ROUTES.slice(0, 2), { day: 2, stops: [1, 3] }, { day: 3, stops: [1, 3, 2, 3] }];
    expect(checkCollection(SMALL, moved).faults).toEqual(['customer 2 is visited on days 0 3']);
  });

  it('are spaced evenly', () => {
    expect(evenlySpaced(6, 2)).toEqual([0b001001, 0b010010, 0b100100]);
    expect(evenlySpaced(4, 4)).toEqual([0b1111]);
    expect(evenlySpaced(4, 3)).toEqual([]);
  });

  it('are found: the best by hand, and near what is stored of a published one', (context) => {
    expect(solve(TEXT, 100)).toMatchObject({ cost: 44, faults: [] });
    const [roma] = publicInstances('pvrpif', /^Roma_020_4_5$/) ?? [];
    if (roma === undefined) return context.skip(NO_INSTANCES);
    const found = solve(roma.text, 4000);
    expect(found?.faults).toEqual([]);
    expect(found?.cost).toBeLessThan(1.03 * (roma.entry.bestKnown ?? 0));
  });

  it('as stored cost what is stored', (context) => {
    const entries = publicInstances('pvrpif');
    if (entries === null) return context.skip(NO_INSTANCES);
    expect(entries).toHaveLength(40);
    for (const { entry, text, stored } of entries) {
      const found = checkCollection(readCollection(text), storedDays(stored));
      const stated = Number(/with cost ([\d.]+)/.exec(stored)?.[1]);
      expect({ entry, ...found }).toEqual({ entry, cost: stated, faults: [] });
    }
  });
});

/** Lines `Day: 0: ...` followed by lines `path 0.0 8.0 ... 0.0`, depot at both ends. */
function storedDays(report: string): readonly CollectionRoute[] {
  return [...report.matchAll(/^Day: (\d+):[\s\S]*?^path(.*)$/gm)].map(([, day, path = '']) => ({
    day: Number(day),
    stops: path.trim().split(/\s+/).map(Number).slice(1, -1),
  }));
}
