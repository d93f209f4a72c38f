import { expect, test } from 'vitest';
import type { Head } from '../../../core/book/index.ts';
import { passHeadOf } from '../../../core/passes/index.ts';

const HEAD: Head = {
  id: 'boom',
  name: 'boom',
  purpose: 'spray',
  swathFt: 8,
  speedMph: 4,
  fieldEfficiency: 0.6,
  swapMin: 0,
  compartmentIds: [],
};

test('a head that the book does not say how to drive has no passes', () => {
  expect(passHeadOf(HEAD)).toBeNull();
});

test('what is not said of driving stays unsaid, and no section is no section', () => {
  const passes = { overlapFt: 1, trimPasses: 2, turnSec: 4 };
  expect(passHeadOf({ ...HEAD, passes })).toEqual({ swathFt: 8, speedMph: 4, ...passes });
  expect(passHeadOf({ ...HEAD, passes: { ...passes, sectionsFt: [] } })).toEqual({
    swathFt: 8,
    speedMph: 4,
    ...passes,
  });
});

test('all that is said is taken over', () => {
  const passes = {
    overlapFt: 1,
    trimPasses: 2,
    turnSec: 4,
    trimSwathFt: 4,
    sectionsFt: [4, 4],
    shieldedSide: 'left',
    squareCorners: true,
    transitMph: 5,
    mark: { what: 'foam', flOzPer1000Ft: 3 },
  } as const;
  expect(passHeadOf({ ...HEAD, passes: { ...passes, handTrimFromSqFt: 50, upAndDownFromDeg: 8 } })).toEqual({
    swathFt: 8,
    speedMph: 4,
    ...passes,
  });
});
