import { describe, expect, test } from 'vitest';
import { type ChanceWish, dayChance } from '../../../../core/plan/chance/index.ts';
import { explainPlan, type PlanActivity } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { dayOf, drive, morning, refill, STILL, setUp, treat } from './days.ts';

/**
 * Values of the standard normal distribution: NIST/SEMATECH e-Handbook of Statistical Methods, tables 1.3.6.7.1 (cumulative) and, for
 * the 90 % point, the same table read the other way.
 */
const UP_TO_ONE = 0.8413;
const POINT_90 = 1.2816;

const wish = (more: Partial<ChanceWish> = {}): ChanceWish => ({
  spread: STILL,
  hours: new Map(),
  extraRefillSec: 0,
  shiftEndSec: 86_400,
  seed: 5,
  played: 20_000,
  ...more,
});
/** Three standard errors of a share of 20,000 days are at most 1.1 points. */
const POINTS = 0.011;
const near = (value: number, expected: number, slack: number): void =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(slack);

describe('one piece of work with a lognormal length', () => {
  const HOUR = 3600;
  const DEVIATION = 0.3;
  const sigma = Math.sqrt(Math.log(1 + DEVIATION ** 2));
  const lasting = (z: number): number => HOUR * Math.exp(sigma * z - sigma ** 2 / 2);
  const day = dayOf([treat(0, HOUR)]);

  test.each([0, 0.5, 1])(
    'is done in time as often as the closed form says, %s of the variance in common',
    (inCommon) => {
      const spread = { ...STILL, treat: DEVIATION, inCommon };
      const found = dayChance(day, wish({ spread, shiftEndSec: lasting(1) }));
      near(found.inShiftShare, UP_TO_ONE, POINTS);
      near(found.end.sec90, lasting(POINT_90), HOUR * 0.02);
      near(found.end.sec50, lasting(0), HOUR * 0.015);
      near(found.end.sec10, lasting(-POINT_90), HOUR * 0.015);
    },
  );

  test('a mean of 1.2 makes every time a fifth longer', () => {
    const spread = { ...STILL, treat: DEVIATION };
    const usual = dayChance(day, wish({ spread }));
    const longer = dayChance(day, wish({ spread: { ...spread, treatMean: 1.2 } }));
    for (const point of ['sec10', 'sec50', 'sec90'] as const) near(longer.end[point], usual.end[point] * 1.2, 1e-6);
  });
});

test('a hundred pieces that go their own ways even out as the square root says, and do not where all is in common', () => {
  const pieces = Array.from({ length: 100 }, (_, index) => treat(index * 60, index * 60 + 60));
  const width = (inCommon: number): number => {
    const { end } = dayChance(dayOf(pieces), wish({ spread: { ...STILL, treat: 0.2, inCommon } }));
    return (end.sec90 - end.sec10) / (2 * POINT_90);
  };
  // The sum of 100 pieces of 60 s, each with a deviation of 12 s: 12 * 10 = 120 s. By the central limit theorem it is nearly normal.
  near(width(0), 120, 6);
  // One factor for all: 6,000 s with a deviation of a fifth; lognormal, so 1,200 s to within what its skew adds.
  near(width(1), 1200, 40);
});

describe('a tank', () => {
  // Ten gallons for a draw of nine: it runs out where nine times the factor is more than ten.
  const DEVIATION = 0.1;
  const sigma = Math.sqrt(Math.log(1 + DEVIATION ** 2));
  const day = dayOf([morning(0, 600, 10), treat(600, 1200, 9)]);
  const spread = { ...STILL, used: DEVIATION };

  test('runs out as often as the closed form says', () => {
    // ln(10 / 9) = 0.10536; sigma = 0.09975, so z = 0.10536 / 0.09975 + 0.09975 / 2 = 1.1061; the table has 0.8657 for it.
    near(Math.log(10 / 9) / sigma + sigma / 2, 1.1061, 0.0001);
    const found = dayChance(day, wish({ spread }));
    near(found.loads[0]?.runsOutShare ?? 0, 1 - 0.8657, POINTS);
    expect(found.runsOutShare).toBe(found.loads[0]?.runsOutShare);
  });

  test('that runs out costs the time of a refill', () => {
    const found = dayChance(day, wish({ spread: { ...STILL, usedMean: 1.2 }, extraRefillSec: 300 }));
    expect(found.runsOutShare).toBe(1);
    expect(found.end.sec50).toBe(1500);
  });

  test('whose refill at the same stop comes a little early costs nothing more, and is short of that little afterwards', () => {
    const same = dayOf([morning(0, 600, 10), treat(600, 1200, 10), refill(1200, 1500, 5), treat(1500, 2000, 4)]);
    // 11 of 10 gallons: one gallon comes out of the refill's 5, and 4.4 of the 4 that are left then: once more.
    const found = dayChance(same, wish({ spread: { ...STILL, usedMean: 1.1 }, extraRefillSec: 300, played: 10 }));
    expect(found.loads.map((each) => each.runsOutShare)).toEqual([0, 1]);
    expect(found.end.sec50).toBe(2300);
    // 10.5 of 10, then 5 - 0.5 = 4.5 for 4.2.
    const enough = dayChance(same, wish({ spread: { ...STILL, usedMean: 1.05 }, extraRefillSec: 300, played: 10 }));
    expect(enough).toMatchObject({ runsOutShare: 0, end: { sec50: 2000 } });
    const roomy = dayOf([morning(0, 600, 10), treat(600, 1200, 10), refill(1200, 1500, 6), treat(1500, 2000, 4)]);
    const once = dayChance(roomy, wish({ spread: { ...STILL, usedMean: 1.1 }, extraRefillSec: 300, played: 10 }));
    expect(once).toMatchObject({ runsOutShare: 0, end: { sec50: 2000 } });
  });

  test('whose refill is planned at the next stop is filled earlier, and the refill falls out there', () => {
    const next = dayOf([
      morning(0, 600, 10),
      treat(600, 1200, 10),
      drive(1200, 1300),
      refill(1300, 1500, 6),
      treat(1500, 2000, 4),
    ]);
    // A gallon of the 6 is used at the first stop, and 4.4 at the second one.
    const found = dayChance(next, wish({ spread: { ...STILL, usedMean: 1.1 }, extraRefillSec: 300, played: 10 }));
    expect(found).toMatchObject({ earlyShare: 1, runsOutShare: 0, end: { sec50: 2000 } });
    expect(found.loads.map((each) => each.earlyShare)).toEqual([1, 0]);
  });

  test('whose next refill is at a fill point takes one more from the rig', () => {
    const point = {
      ...(refill(1300, 1500, 6) as Extract<PlanActivity, { readonly kind: 'refill' }>),
      fillPointId: 'shop',
    };
    const next = dayOf([morning(0, 600, 10), treat(600, 1200, 10), drive(1200, 1300), point, treat(1500, 2000, 4)]);
    const found = dayChance(next, wish({ spread: { ...STILL, usedMean: 1.1 }, extraRefillSec: 300, played: 10 }));
    expect(found).toMatchObject({ earlyShare: 0, runsOutShare: 1, end: { sec50: 2300 } });
    expect(found.loads.map((each) => each.runsOutShare)).toEqual([1, 0]);
  });

  test('is filled to its mark each time, so that one load does not answer for the one before', () => {
    const two = dayOf([morning(0, 600, 10), treat(600, 1200, 6), refill(1200, 1500, 6), treat(1500, 2000, 7)]);
    // 6 * 1.5 = 9 of 10 gallons, then 7 * 1.5 = 10.5 of 10.
    const found = dayChance(two, wish({ spread: { ...STILL, usedMean: 1.5 }, played: 10 }));
    expect(found.loads.map((each) => each.runsOutShare)).toEqual([0, 1]);
  });

  test('that is used to the last drop by several lawns does not run out where all comes as planned', () => {
    const full = dayOf([morning(0, 600, 10), treat(600, 900, 3.3), treat(900, 1000, 3.3), treat(1000, 1200, 3.4)]);
    expect(dayChance(full, wish({ played: 10 })).runsOutShare).toBe(0);
  });
});

describe('hours and waits', () => {
  const day = dayOf([
    drive(0, 1000),
    { kind: 'wait', startSec: 1000, endSec: 1500 },
    setUp(1500, 1600),
    treat(1600, 2000),
  ]);

  test('a wait takes up what a slow drive costs', () => {
    const late = dayChance(day, wish({ spread: { ...STILL, driveMean: 1.4 }, played: 10 }));
    expect(late.end.sec90).toBe(2000);
    const tooLate = dayChance(day, wish({ spread: { ...STILL, driveMean: 1.7 }, played: 10 }));
    expect(tooLate.end.sec90).toBe(2200);
  });

  test('nobody begins before a lawn opens, and who comes after it has closed is said to be too late', () => {
    const near10 = dayOf([drive(0, 1000), setUp(1000, 1100)]);
    const hours = new Map([['p', { openSec: 900, closeSec: 1200 }]]);
    const early = dayChance(near10, wish({ spread: { ...STILL, driveMean: 0.5 }, hours, played: 10 }));
    expect(early.end.sec50).toBe(1000);
    expect(early.missedShare).toBe(0);
    const late = dayChance(near10, wish({ spread: { ...STILL, driveMean: 1.3 }, hours, played: 10 }));
    expect(late.stops[0]).toMatchObject({ missedShare: 1, arrive: { sec50: 1300 } });
  });

  test('what a second person does goes on beside the first one', () => {
    const two = dayOf([setUp(0, 100), treat(100, 400), treat(100, 300, 0, 2), drive(400, 500)]);
    expect(dayChance(two, wish({ played: 10 })).end.sec50).toBe(500);
    const slow = dayChance(two, wish({ spread: { ...STILL, treatMean: 2 }, played: 10 }));
    expect(slow.end.sec50).toBe(800);
  });
});

describe('the day of the sample', () => {
  const book = sampleBook('mixed-day');
  const problem = problemOf(book);
  const plan = explainPlan(book, problem, solve(problem, { seed: 3, iterations: 200 }));

  test('is as planned where nothing has any spread, and nothing runs out', () => {
    for (const day of plan.days) {
      const found = dayChance(day, wish({ played: 3, shiftEndSec: day.endSec }));
      near(found.end.sec50, day.endSec, 0.01);
      expect(found).toMatchObject({ inShiftShare: 1, runsOutShare: 0, missedShare: 0 });
      found.stops.forEach(({ arrive }, index) => {
        near(arrive.sec50, day.stops[index]?.arriveSec ?? -1, 0.01);
      });
    }
  });

  test('has the same figures for the same seed, and ranges in order', () => {
    const spread = { ...STILL, drive: 0.2, setUp: 0.25, treat: 0.1, used: 0.05, inCommon: 0.5 };
    for (const day of plan.days) {
      const found = dayChance(day, wish({ spread, played: 200 }));
      expect(dayChance(day, wish({ spread, played: 200 }))).toEqual(found);
      expect(dayChance(day, wish({ spread, played: 200, seed: 6 }))).not.toEqual(found);
      for (const { sec10, sec50, sec90 } of [found.home, found.end, ...found.stops.map((each) => each.arrive)]) {
        expect(sec10).toBeLessThanOrEqual(sec50);
        expect(sec50).toBeLessThanOrEqual(sec90);
      }
    }
  });
});
