import { expect, test } from 'vitest';
import { checkSplit, readSplit, SETS } from '../bench/routing/sets/split.ts';
import { publicInstances, STILL } from './shared.ts';

const TEXT = '3 10\n6 7 4\n0 0\n 3 4\n-3 4\n0 10\n';
const instance = readSplit(TEXT);

test('reads demands, depot and customers', () => {
  expect(instance).toEqual({
    capacity: 10,
    demand: [0, 6, 7, 4],
    points: [
      [0, 0],
      [3, 4],
      [-3, 4],
      [0, 10],
    ],
  });
  expect(() => readSplit('3 10\n6 7 4\n0 0\n 3 4\n-3 4\n0')).toThrow();
});

test('checker adds up rounded edges', () => {
  const routes = [
    [
      { customer: 1, amount: 6 },
      { customer: 3, amount: 4 },
    ],
    [{ customer: 2, amount: 7 }],
  ];
  // 5 + sqrt(45) rounded + 10, and twice 5.
  expect(checkSplit(instance, routes)).toEqual({ cost: 5 + 7 + 10 + 10, faults: [] });
});

test('checker names what is wrong', () => {
  const faults = (...routes: [number, number][][]) =>
    checkSplit(
      instance,
      routes.map((route) => route.map(([customer, amount]) => ({ customer, amount }))),
    ).faults;
  expect(faults([[1, 6]], [[2, 7]])).toEqual(['customer 3 is brought 0 of 4']);
  expect(
    faults(
      [[1, 6]],
      [
        [2, 7],
        [3, 4],
      ],
    ),
  ).toEqual(['route 2 carries 11 of 10']);
  expect(faults([[1, 6]], [[2, 7]], [[3, 5]])).toEqual(['customer 3 is brought 5 of 4']);
  expect(
    faults(
      [
        [1, 7],
        [3, -1],
      ],
      [[2, 7]],
      [
        [3, 5],
        [1, -1],
      ],
    ),
  ).toHaveLength(2);
  expect(
    faults(
      [
        [1, 6],
        [3, 4],
      ],
      [[2, 7]],
      [[4, 1]],
    ),
  ).toContain('there is no customer 4');
});

test('the least of the instance by hand', () => {
  const answer = SETS[0]
    ?.prepare(TEXT, { set: '', instance: '', file: '' })
    .solve({ seed: 1, iterations: 300, clock: STILL });
  // Two routes are needed; customer 3 lies beyond 1 and 2, so that one of them goes on to it: 5 + 7 + 10 + 10.
  expect(answer).toMatchObject({ cost: 32, faults: [] });
});

test('published values of small instances', (context) => {
  const cases = publicInstances('split-set-1', /^SD[13]$/);
  if (cases === null) return context.skip('the public instances are not here');
  for (const { entry, text } of cases) {
    const answer = SETS[0]?.prepare(text, entry).solve({ seed: 1, iterations: 20_000, clock: STILL });
    expect(answer).toMatchObject({ cost: entry.bestKnown, faults: [] });
  }
});
