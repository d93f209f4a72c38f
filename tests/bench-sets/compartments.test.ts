import { expect, test } from 'vitest';
import { type Collected, checkCompartments, readCompartments, SETS } from '../bench/routing/sets/compartments.ts';
import { publicInstances, STILL } from './shared.ts';

const TEXT = `NAME : by hand
DIMENSION : 3
CAPACITY : 100
VEHICLES : 2
PRODUCT TYPES : 2
COMPARTMENTS : 2
NODE_COORD_SECTION
1 0 0
2 3 4
3 6 8
DEMAND_SECTION
1 0 0
2 41 0
3 5 48
DEPOT_SECTION
1
EOF`;
const instance = readCompartments(TEXT);
const routes = (...each: [number, number][][]): Collected[][] =>
  each.map((route) => route.map(([point, product]) => ({ point, product })));
const faults = (...each: [number, number][][]) => checkCompartments(instance, routes(...each)).faults;

test('reads places and products', () => {
  expect(instance).toEqual({
    capacity: 100,
    vehicles: 2,
    compartments: 2,
    points: [
      [0, 0],
      [3, 4],
      [6, 8],
    ],
    supply: [
      [0, 0],
      [41, 0],
      [5, 48],
    ],
  });
  expect(() => readCompartments(TEXT.replace('3 6 8\n', ''))).toThrow();
});

test('checker adds up edges and lets several vehicles come to one place', () => {
  const plan = routes(
    [
      [1, 0],
      [2, 0],
    ],
    [[2, 1]],
  );
  expect(checkCompartments(instance, plan)).toEqual({ cost: 40, faults: [] });
  // 46 and 48 take five tenths each.
  expect(
    checkCompartments(
      instance,
      routes([
        [1, 0],
        [2, 0],
        [2, 1],
      ]),
    ),
  ).toEqual({ cost: 20, faults: [] });
});

test('checker names what is wrong', () => {
  expect(
    faults([
      [1, 0],
      [2, 0],
    ]),
  ).toEqual(['product 2 is left at 2']);
  expect(faults([[1, 0]], [[2, 0]], [[2, 1]])).toEqual(['3 routes for 2 vehicles']);
  expect(
    faults([
      [1, 0],
      [2, 0],
      [2, 1],
      [1, 1],
    ]),
  ).toEqual(['route 1 finds no product 2 at 1']);
  expect(
    faults([
      [1, 0],
      [2, 0],
      [2, 1],
      [2, 1],
    ]),
  ).toHaveLength(1);
  const small = { ...instance, capacity: 95, compartments: 1 };
  expect(
    checkCompartments(
      small,
      routes([
        [1, 0],
        [2, 0],
        [2, 1],
      ]),
    ).faults,
  ).toEqual(['route 1 needs 104.5 of 95', 'route 1 needs 2 compartments of 1']);
});

test('published optima', (context) => {
  const cases = publicInstances('mcvrp-henke', /3_3_[123]_\((02|26|50)\)$/);
  if (cases === null) return context.skip('the public instances are not here');
  expect(cases).toHaveLength(9);
  for (const { entry, text } of cases) {
    const answer = SETS[0]?.prepare(text, entry).solve({ seed: 1, iterations: 4000, clock: STILL });
    expect(answer?.faults).toEqual([]);
    expect(Math.abs((answer?.cost ?? 0) - (entry.bestKnown ?? 0)), entry.instance).toBeLessThan(0.011);
  }
});
