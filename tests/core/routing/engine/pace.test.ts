import { expect, test } from 'vitest';
import { Pace } from '../../../../core/routing/engine/pace.ts';

const phases = (pace: Pace, leastIterations: number): number[] => {
  const seen: number[] = [];
  while (!pace.over()) seen.push(pace.phase(leastIterations));
  return seen;
};
const restarts = (seen: readonly number[]): number =>
  seen.filter((each, at) => at > 0 && each < (seen[at - 1] as number)).length;

test('a long search is cooled as often as there is room for, each time from 0 to nearly 1', () => {
  const seen = phases(new Pace({ iterations: 100_000 }, undefined), 24_000);
  expect(restarts(seen)).toBe(3);
  expect(Math.max(...seen)).toBeGreaterThan(0.98);
  expect(Math.max(...seen)).toBeLessThan(1);
});

test('a short search is cooled once', () => {
  const seen = phases(new Pace({ iterations: 100_000 }, undefined), 60_000);
  expect(restarts(seen)).toBe(0);
  expect(Math.max(...seen)).toBeGreaterThan(0.98);
});

test('by the clock, coolings are counted once the pace is known', () => {
  let now = 0;
  const clock = { nowMs: () => now };
  const pace = new Pace({ seconds: 10 }, clock);
  const seen: number[] = [];
  while (!pace.over()) {
    now += 0.1;
    seen.push(pace.phase(20_000));
  }
  expect(seen.length).toBeGreaterThan(99_000);
  expect(restarts(seen)).toBe(4);
});
