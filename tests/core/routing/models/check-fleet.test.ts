import { expect, test } from 'vitest';
import { judgeRoutes, ROUTING_FORMATS } from '../../../../core/routing/index.ts';
import { MIXED, RESTRICTED, SEVERAL_LOADS } from '../fleet-instances.ts';

function faultsOf(text: string, routes: readonly (readonly number[])[]): readonly string[] {
  return judge(text, routes).faults;
}

function judge(text: string, routes: readonly (readonly number[])[]) {
  const read = ROUTING_FORMATS[0]?.read(text, 'fleet.vrp', {});
  if (read?.ok !== true) throw new Error('not read');
  return judgeRoutes(read.value, routes);
}

test('a route costs what its vehicle costs', () => {
  // Vehicle 1: 10 + (2 + 2); vehicle 2: 12.5 + 2 * (5 + 5 + 10).
  expect(judge(MIXED, [[3], [1, 2], []])).toEqual({ cost: 66.5, faults: [] });
  expect(judge(MIXED, [[3], [1], [2]]).cost).toBeCloseTo(14 + 32.5 + 30, 9);
});

test('each vehicle carries no more than it can', () => {
  expect(faultsOf(MIXED, [[1, 2], [3]])).toEqual(['vehicle 1 carries 6 of 5']);
  expect(faultsOf(MIXED, [[], [1, 2], [3], []])).toEqual(['4 routes for 3 vehicles']);
});

test('nobody goes where he may not, nor comes back for more where that is not so', () => {
  expect(faultsOf(RESTRICTED, [[3], [1, 2]])).toEqual(['vehicle 1 may not go to 3', 'vehicle 2 may not go to 1']);
  expect(faultsOf(RESTRICTED, [[1, 0, 2], [3]])[0]).toBe('vehicle 1 comes back for more');
});

test('windows and the longest day', () => {
  // Leaves at 5, is at customer 1 from 10 to 12, at customer 2 from 17 to 20, home at 30: out for 25.
  expect(faultsOf(RESTRICTED, [[1, 2], [3]])).toEqual([]);
  expect(faultsOf(RESTRICTED.replace('DURATION: 30', 'DURATION: 25'), [[1, 2], [3]])).toEqual([]);
  expect(faultsOf(RESTRICTED.replace('DURATION: 30', 'DURATION: 24'), [[1, 2], [3]])).toEqual([
    'vehicle 1 is out for 25000, 24000 at most',
  ]);
  // The other way round customer 1 is reached at 10 + 3 + 5 = 18, in time; with a window to 17 it is not.
  expect(faultsOf(RESTRICTED, [[2, 1], [3]])).toEqual([]);
  expect(faultsOf(RESTRICTED.replace('2 10 20', '2 10 17'), [[2, 1], [3]])).toEqual(['vehicle 1 is late at 1']);
});

test('a vehicle waits for its goods and comes back for more', () => {
  // Loads at 10, is at customer 3 at 12, back at 16 with the second load: 21, 28, home at 40.
  expect(judge(SEVERAL_LOADS, [[3, 0, 1, 2]])).toEqual({ cost: 24, faults: [] });
  expect(faultsOf(SEVERAL_LOADS, [[1, 2, 0, 3]])).toEqual(['vehicle 1 is late at 3']);
  expect(faultsOf(SEVERAL_LOADS.replace('4 10', '4 29'), [[3], [1, 2]])).toEqual(['vehicle 1 is late at 3']);
  expect(faultsOf(SEVERAL_LOADS, [[3, 1, 2]])).toEqual(['vehicle 1 carries 9 of 6']);
  expect(faultsOf(SEVERAL_LOADS, [[3, 0, 1]])).toEqual(['customer 2 is visited 0 times']);
});
