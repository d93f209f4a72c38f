import { describe, expect, test } from 'vitest';
import { ROUTING_FORMATS, type RoutingProblem } from '../../../core/routing/index.ts';
import { MIXED, RESTRICTED, SEVERAL_LOADS } from './fleet-instances.ts';

function read(text: string, options = {}): RoutingProblem {
  const result = ROUTING_FORMATS[0]?.read(text, 'fleet.vrp', options);
  if (result?.ok !== true) throw new Error(result?.error.detail ?? 'no such format');
  return result.value;
}

describe('VRPLIB with a fleet', () => {
  test('vehicles that are alike make one kind, with costs in hundredths and lengths not rounded', () => {
    const { fleet, ...problem } = read(MIXED);
    expect(fleet?.kinds).toEqual([
      { vehicles: [0, 2], capacity: 5, fixed: 10, perLength: 1 },
      { vehicles: [1], capacity: 9, fixed: 12.5, perLength: 2 },
    ]);
    expect(problem).toMatchObject({ vehicles: 3, capacity: 9, windows: null, costPerUnit: 10_000 });
    expect(problem.distances[1 * 4 + 3]).toBe(Math.hypot(3, 2));
    expect(problem.cost[1 * 4 + 3]).toBe(361);
  });

  test('where vehicles may go, when, and for how long, in thousandths', () => {
    const { fleet, windows, service } = read(RESTRICTED);
    expect([...(fleet?.allowed ?? [])].slice(1)).toEqual([1, 3, 2]);
    expect(fleet).toMatchObject({ mostDuration: 30_000, reloads: false, release: undefined });
    expect([...(windows?.close ?? [])]).toEqual([100_000, 20_000, 90_000, 90_000]);
    expect([...service]).toEqual([0, 2000, 3000, 4000]);
  });

  test('releases and reloads, in tenths cut down', () => {
    const { fleet, distances, service } = read(SEVERAL_LOADS);
    expect(fleet?.reloads).toBe(true);
    expect([...(fleet?.release ?? [])]).toEqual([0, 0, 50, 100]);
    expect(distances[1 * 4 + 3]).toBe(3.6);
    expect([...service]).toEqual([0, 20, 20, 20]);
  });

  test('told so, fewer vehicles are used: the first ones of the file', () => {
    expect(read(MIXED, { vehicles: 1 }).fleet?.kinds).toEqual([
      { vehicles: [0], capacity: 5, fixed: 10, perLength: 1 },
    ]);
  });

  test.each([
    ['no vehicles', MIXED.replace('VEHICLES: 3', 'VEHICLES: 0'), 'VEHICLES'],
    ['a capacity missing', MIXED.replace('3 5\n', ''), 'CAPACITY_SECTION'],
    ['a cost that is no number', MIXED.replace('2 1250', '2 dear'), 'VEHICLES_FIXED_COST_SECTION'],
    ['vehicles out of order', MIXED.replace('2 200', '3 200'), 'VEHICLES_UNIT_DISTANCE_COST_SECTION'],
    ['a place that is none', RESTRICTED.replace('2 3 4\nEOF', '2 3 9\nEOF'), 'VEHICLES_ALLOWED_CLIENTS_SECTION'],
    ['a window missing', RESTRICTED.replace('4 0 90\n', ''), 'TIME_WINDOW_SECTION'],
    ['a service missing', RESTRICTED.replace('4 4\n', ''), 'SERVICE_TIME_SECTION'],
    ['a service time below nothing', SEVERAL_LOADS.replace('SERVICE_TIME: 2', 'SERVICE_TIME: -2'), 'SERVICE_TIME'],
    ['a day that is no number', RESTRICTED.replace('DURATION: 30', 'DURATION: long'), 'VEHICLES_MAX_DURATION'],
    ['a release missing', SEVERAL_LOADS.replace('4 10\n', ''), 'RELEASE_TIME_SECTION'],
    ['a demand missing', MIXED.replace('4 3\n', ''), 'DEMAND_SECTION'],
    [
      'reloads of vehicles that differ',
      SEVERAL_LOADS.replace('CAPACITY: 6', 'CAPACITY: 6\nVEHICLES_MAX_DURATION: 9'),
      'RELOAD',
    ],
    ['a depot elsewhere', `${MIXED}\nDEPOT_SECTION\n2\n`, 'DEPOT_SECTION'],
  ])('refused with its place: %s', (_, text, place) => {
    const result = ROUTING_FORMATS[0]?.read(text, 'fleet.vrp', {});
    expect(result).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
    if (result?.ok === false) expect(result.error.where).toContain(place);
  });
});
