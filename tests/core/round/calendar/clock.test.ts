import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockChangeOn, clockShift, shiftOnClock } from '../../../../core/round/calendar/index.ts';

// 15 U.S.C. 260a: second Sunday of March, first Sunday of November. In 2027 these are 14 March and 7 November.
const SPRING = '2027-03-14';
const AUTUMN = '2027-11-07';

describe('the change of the clock', () => {
  test.each([
    ['2027-03-14', 60],
    ['2027-11-07', -60],
    ['2026-03-08', 60],
    ['2026-11-01', -60],
    ['2028-03-12', 60],
    ['2027-03-07', null],
    ['2027-03-21', null],
    ['2027-03-13', null],
    ['2027-11-14', null],
  ] as const)('%s: %s minutes', (date, byMin) => {
    expect(clockChangeOn(date, 'united-states')?.byMin ?? null).toBe(byMin);
    expect(clockChangeOn(date, 'none')).toBeNull();
  });
});

describe('a shift by the clock on the wall', () => {
  test('by day is one span', () => {
    expect(shiftOnClock('2027-03-16', 450, 600, 'united-states')).toEqual([
      { date: '2027-03-16', fromMin: 450, toMin: 1050 },
    ]);
    // On the day of the change, after it.
    expect(shiftOnClock(SPRING, 450, 600, 'united-states')).toEqual([{ date: SPRING, fromMin: 450, toMin: 1050 }]);
  });

  test('over midnight goes on on the next date, also from a leap day', () => {
    expect(shiftOnClock('2028-02-29', 1320, 480, 'united-states')).toEqual([
      { date: '2028-02-29', fromMin: 1320, toMin: 1440 },
      { date: '2028-03-01', fromMin: 0, toMin: 360 },
    ]);
    expect(shiftOnClock('2027-03-16', 960, 480, 'united-states')).toEqual([
      { date: '2027-03-16', fromMin: 960, toMin: 1440 },
    ]);
  });

  test('over the change in spring ends an hour later by the clock: eight real hours from 10 pm end at 7 am', () => {
    const spans = shiftOnClock('2027-03-13', 1320, 480, 'united-states');
    expect(spans).toEqual([
      { date: '2027-03-13', fromMin: 1320, toMin: 1440 },
      { date: SPRING, fromMin: 0, toMin: 120 },
      { date: SPRING, fromMin: 180, toMin: 420 },
    ]);
    expect(clockShift('2027-03-13', 1320, 480, 'united-states')).toBe(60);
    expect(clockShift('2027-03-13', 1320, 480, 'none')).toBe(0);
    expect(clockShift('2027-03-13', 1320, 240, 'united-states')).toBe(0);
  });

  test('over the change in autumn ends an hour earlier by the clock, and has one hour twice', () => {
    expect(shiftOnClock('2027-11-06', 1320, 480, 'united-states')).toEqual([
      { date: '2027-11-06', fromMin: 1320, toMin: 1440 },
      { date: AUTUMN, fromMin: 0, toMin: 120 },
      { date: AUTUMN, fromMin: 60, toMin: 300 },
    ]);
    expect(clockShift('2027-11-06', 1320, 480, 'united-states')).toBe(-60);
  });

  test('that would start in the hour that is left out starts an hour later', () => {
    expect(shiftOnClock(SPRING, 150, 60, 'united-states')).toEqual([{ date: SPRING, fromMin: 210, toMin: 270 }]);
  });

  test('lasts as many real minutes as it is long, whatever the clock does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 800 }),
        fc.integer({ min: 0, max: 1439 }),
        fc.integer({ min: 0, max: 2000 }),
        (offset, startMin, lengthMin) => {
          const date = new Date(Date.UTC(2027, 0, 1 + offset)).toISOString().slice(0, 10);
          const spans = shiftOnClock(date, startMin, lengthMin, 'united-states');
          expect(spans.reduce((sum, each) => sum + each.toMin - each.fromMin, 0)).toBe(lengthMin);
        },
      ),
      { numRuns: 500, seed: 9 },
    );
  });
});
