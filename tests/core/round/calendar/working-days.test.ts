import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Calendar, emptyBook } from '../../../../core/book/index.ts';
import {
  calendarOf,
  heldBackCount,
  isWorkday,
  nextWorkday,
  roundDays,
  workdaysBetween,
} from '../../../../core/round/calendar/index.ts';

const USUAL = calendarOf(emptyBook('b', 'Book'));
const MEMORIAL: Calendar = { ...USUAL, holidays: [{ on: '2027-05-31', name: 'Memorial Day' }] };

describe('working days between two dates', () => {
  test('are Monday to Friday where the book has no calendar, both ends counted', () => {
    // 1 March 2027 is a Monday: five days, then the next Monday.
    expect(workdaysBetween(USUAL, '2027-03-01', '2027-03-08')).toEqual([
      '2027-03-01',
      '2027-03-02',
      '2027-03-03',
      '2027-03-04',
      '2027-03-05',
      '2027-03-08',
    ]);
    expect(workdaysBetween(USUAL, '2027-03-06', '2027-03-07')).toEqual([]);
    expect(workdaysBetween(USUAL, '2027-03-08', '2027-03-01')).toEqual([]);
  });

  test('have the 29th of February in a leap year alone', () => {
    // 29 February 2028 is a Tuesday.
    expect(workdaysBetween(USUAL, '2028-02-28', '2028-03-01')).toEqual(['2028-02-28', '2028-02-29', '2028-03-01']);
    expect(workdaysBetween(USUAL, '2027-02-26', '2027-03-01')).toEqual(['2027-02-26', '2027-03-01']);
  });

  test('leave out holidays and weekdays that are not worked', () => {
    expect(workdaysBetween(MEMORIAL, '2027-05-28', '2027-06-01')).toEqual(['2027-05-28', '2027-06-01']);
    const four: Calendar = { ...USUAL, workdays: ['monday', 'tuesday', 'thursday', 'saturday'] };
    expect(workdaysBetween(four, '2027-03-01', '2027-03-07')).toEqual([
      '2027-03-01',
      '2027-03-02',
      '2027-03-04',
      '2027-03-06',
    ]);
  });

  test('do not shift where the clock is changed', () => {
    // Clocks go forward on Sunday 14 March 2027 and back on Sunday 7 November 2027.
    expect(workdaysBetween(USUAL, '2027-03-12', '2027-03-15')).toEqual(['2027-03-12', '2027-03-15']);
    expect(workdaysBetween(USUAL, '2027-11-05', '2027-11-08')).toEqual(['2027-11-05', '2027-11-08']);
  });

  test('the next one comes after weekends and holidays; without any it is the next day', () => {
    expect(nextWorkday(MEMORIAL, '2027-05-28')).toBe('2027-06-01');
    expect(nextWorkday(USUAL, '2027-12-31')).toBe('2028-01-03');
    expect(nextWorkday({ ...USUAL, workdays: [] }, '2027-02-28')).toBe('2027-03-01');
  });

  test('are as many in any 28 days as in four weeks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), (offset) => {
        const from = new Date(Date.UTC(2027, 0, 1 + offset)).toISOString().slice(0, 10);
        const to = new Date(Date.UTC(2027, 0, 28 + offset)).toISOString().slice(0, 10);
        const days = workdaysBetween(USUAL, from, to);
        expect(days).toHaveLength(20);
        expect(days.every((date) => isWorkday(USUAL, date))).toBe(true);
      }),
      { numRuns: 100, seed: 5 },
    );
  });
});

describe('days held back for weather', () => {
  test.each([
    [20, 0.15, 3],
    [20, 0.16, 4],
    [1, 0.01, 1],
    [10, 0, 0],
    [0, 0.5, 0],
    // 100 x 0.07 is 7.000000000000001 in a computer.
    [100, 0.07, 7],
    [30, 0.1, 3],
  ])('of %i days and a share of %f: %i', (days, share, held) => {
    expect(heldBackCount(days, share)).toBe(held);
  });

  const week = ['2027-05-27', '2027-05-28', '2027-05-31', '2027-06-01', '2027-06-02'];

  test('are the last ones that are no holiday, and are said in words', () => {
    // Four working days beside Memorial Day; 0.3 of them is 1.2, rounded up 2.
    const { days, words } = roundDays({ ...MEMORIAL, rainShare: 0.3 }, { dates: week });
    expect(days.map((each) => each.kind)).toEqual(['worked', 'worked', 'holiday', 'held-back', 'held-back']);
    expect(days[2]?.why).toBe('holiday (Memorial Day)');
    expect(words).toBe(
      '4 working days, of which the last 2, from 2027-06-01 on, are held back for weather (30 %, rounded up)',
    );
  });

  test('are as many as the round says where it says so', () => {
    const none = roundDays({ ...USUAL, rainShare: 0.3 }, { dates: week, heldBack: 0 });
    expect(none.days.every((each) => each.kind === 'worked')).toBe(true);
    expect(none.words).toBe('5 working days; none is held back for weather');
    expect(roundDays(USUAL, { dates: week, heldBack: 9 }).days.every((each) => each.kind === 'held-back')).toBe(true);
  });
});
