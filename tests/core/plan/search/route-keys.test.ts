import { expect, test } from 'vitest';
import { routeKeys } from '../../../../core/plan/search/route-keys.ts';

test('routes of large problems have keys of their own', () => {
  const small = routeKeys(1000);
  const large = routeKeys(200_000);
  const routes: readonly (readonly number[])[] = [
    [],
    [7],
    [7, 8],
    [8, 7],
    [65_535],
    [65_536],
    [131_072 + 7],
    [0, 7],
    [1, 0],
  ];
  const keys = routes.flatMap((route) => [large(0, route), large(1, route)]);
  expect(new Set(keys).size).toBe(2 * routes.length);
  const few = routes.filter((route) => route.every((code) => code < 1000));
  expect(new Set(few.map((route) => small(0, route))).size).toBe(few.length);
});
