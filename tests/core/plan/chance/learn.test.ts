import { expect, test } from 'vitest';
import type { Visit } from '../../../../core/book/index.ts';
import { learnSpread } from '../../../../core/plan/chance/index.ts';
import { STILL } from './days.ts';

const SET = { ...STILL, drive: 0.2, setUp: 0.2, treat: 0.1, used: 0.05, inCommon: 0.5 };

function visit(number: number, more: Partial<Visit>): Visit {
  return {
    id: `v${number}`,
    on: '2027-03-16',
    roundId: 'r',
    rigId: 'rig',
    propertyId: 'p',
    outcome: { kind: 'done', tasks: [] },
    note: '',
    ...more,
  };
}

const several = (count: number, make: (number: number) => Partial<Visit>): readonly Visit[] =>
  Array.from({ length: count }, (_, number) => visit(number, make(number)));

test('drives that take by turns 10 and 14 minutes of 10 planned ones have a mean of 1.2 and a deviation of a sixth', () => {
  const found = learnSpread(
    several(12, (number) => ({ plannedDriveMin: 10, drivenMin: number % 2 === 0 ? 10 : 14 })),
    SET,
  );
  expect(found.spread.driveMean).toBeCloseTo(1.2, 9);
  // 2 of 12 minutes on either side: 1/6, and 12/11 for a mean that was taken from the same visits.
  expect(found.spread.drive).toBeCloseTo(Math.sqrt(12 / 11) / 6, 9);
  expect(found.spread.treat).toBe(SET.treat);
  expect(found.learned.map((each) => each.visits)).toEqual([12, 0, 0]);
});

test('eleven visits are too few, and what was set stays', () => {
  const found = learnSpread(
    several(11, () => ({ plannedDriveMin: 10, drivenMin: 14 })),
    SET,
  );
  expect(found.spread).toEqual(SET);
  expect(found.least).toBe(12);
  expect(found.learned[0]?.mean).toBeCloseTo(1.4, 9);
});

test('time on site is shared between setting up and treating as their set deviations stand to each other', () => {
  // 4 minutes to set up and 16 to treat; by turns 18 and 22 minutes there: mean 1, deviation 0.1 and the 12/11 of twelve visits.
  const found = learnSpread(
    several(12, (number) => ({
      plannedSetUpMin: 4,
      plannedTreatMin: 16,
      arriveMin: 500,
      leaveMin: number % 2 === 0 ? 518 : 522,
    })),
    SET,
  );
  const deviation = 0.1 * Math.sqrt(12 / 11);
  // As set: hypot(0.2 * 4, 0.1 * 16) / 20 = hypot(0.8, 1.6) / 20 = 0.08944.
  const scale = deviation / (Math.sqrt(0.8 ** 2 + 1.6 ** 2) / 20);
  expect(found.spread.setUp).toBeCloseTo(0.2 * scale, 9);
  expect(found.spread.treat).toBeCloseTo(0.1 * scale, 9);
  expect(Math.hypot(found.spread.setUp * 4, found.spread.treat * 16) / 20).toBeCloseTo(deviation, 9);
  expect(found.spread.treatMean).toBe(1);
});

test('amounts are learned from gallons and pounds, and what was skipped or left blank says nothing', () => {
  const task = { zoneId: 'z', treatmentId: 't', treatedSqFt: 1000 };
  const done = several(6, () => ({
    outcome: {
      kind: 'done',
      tasks: [
        { ...task, expectedGal: 10, usedGal: 10.5 },
        { ...task, expectedLb: 20, usedLb: 21 },
        { ...task, expectedGal: 3 },
      ],
    },
  }));
  const skipped = several(20, () => ({
    plannedDriveMin: 10,
    drivenMin: 30,
    outcome: { kind: 'skipped', reason: 'locked' },
  }));
  const found = learnSpread([...done, ...skipped], SET);
  expect(found.spread.usedMean).toBeCloseTo(1.05, 9);
  expect(found.spread.used).toBeCloseTo(0, 9);
  expect(found.spread.drive).toBe(SET.drive);
});
