import { expect, test } from 'vitest';
import { checkLoads, readLoads, SETS, type VehicleDay } from '../bench/routing/sets/loads.ts';
import { publicInstances, STILL } from './shared.ts';

const TEXT = `# by hand
2	1	1	2	2
0.0	3.5
4.5	0.0
1	10	1	1
2	5	1	2
1	0	10	20	20
1	0	0
1	0	20	8	0
2	0	15	4	6
`;
const instance = readLoads(TEXT);
const load = (depot: number, product: number, ...deliveries: [number, number][]) => ({
  depot,
  product,
  deliveries: deliveries.map(([station, amount]) => ({ station, amount })),
});
const DAY: VehicleDay = { vehicle: 0, loads: [load(0, 0, [1, 2], [0, 8]), load(0, 0, [1, 2]), load(0, 1, [1, 6])] };

test('reads products, vehicles, depots, garages and stations', () => {
  expect(instance).toEqual({
    change: [
      [0, 3.5],
      [4.5, 0],
    ],
    vehicles: [
      { capacity: 10, garage: 0, product: 0 },
      { capacity: 5, garage: 0, product: 1 },
    ],
    depots: [{ point: [0, 10], amounts: [20, 20] }],
    garages: [{ point: [0, 0], amounts: [] }],
    stations: [
      { point: [0, 20], amounts: [8, 0] },
      { point: [0, 15], amounts: [4, 6] },
    ],
  });
  expect(() => readLoads(TEXT.slice(0, -6))).toThrow();
});

test('checker adds up the ways and the changes', () => {
  // 10 + 5 + 5 to station 1, 10 back, 5 + 5, change 3.5, 5 + 15 home.
  expect(checkLoads(instance, [DAY])).toEqual({ cost: 63.5, faults: [] });
});

test('checker names what is wrong', () => {
  const faults = (...days: VehicleDay[]) => checkLoads(instance, days).faults;
  expect(faults({ vehicle: 0, loads: DAY.loads.slice(0, 2) })).toEqual(['station 2 misses 6 of product 2']);
  expect(faults({ ...DAY, vehicle: 1 })).toEqual(['vehicle 2 carries 10 of 5', 'vehicle 2 carries 6 of 5']);
  expect(faults(DAY, { vehicle: 0, loads: [] })).toEqual(['vehicle 1 is not there, or sent out twice']);
  expect(faults({ vehicle: 0, loads: [load(1, 0, [0, 8])] })).toContain('a route goes to a place that is not there');
  const poor = { ...instance, depots: [{ point: [0, 10] as const, amounts: [11, 20] }] };
  expect(checkLoads(poor, [DAY]).faults).toEqual(['depot 1 lacks 1 of product 1']);
});

test('the least of the instance by hand', () => {
  const answer = SETS[0]
    ?.prepare(TEXT, { set: '', instance: '', file: '' })
    .solve({ seed: 1, iterations: 500, clock: STILL });
  // Product 1 first, as the vehicle carried it last: 12 take two loads, one of them to station 2 alone, then product 2.
  expect(answer).toMatchObject({ cost: 63.5, faults: [] });
});

test('public instances are answered without a fault', (context) => {
  const cases = publicInstances('mpvrp-cc', /_(003|013|016|039)_/);
  if (cases === null) return context.skip('the public instances are not here');
  expect(cases).toHaveLength(4);
  for (const { entry, text } of cases) {
    const answer = SETS[0]?.prepare(text, entry).solve({ seed: 1, iterations: 200, clock: STILL });
    expect(answer?.faults, entry.instance).toEqual([]);
    expect(answer?.cost).toBeGreaterThan(0);
  }
});
