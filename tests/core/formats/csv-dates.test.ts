import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessDateOrder, readDate } from '../../../core/formats/index.ts';
import { dateOfDay } from '../../../core/units/index.ts';

describe('dates of a table', () => {
  test.each([
    ['2027-03-16', '2027-03-16'],
    ['2027-03-16T06:00:00', '2027-03-16'],
    ['2027-03-16 06:00', '2027-03-16'],
    ['2027/3/6', '2027-03-06'],
    ['20270316', '2027-03-16'],
    ['16 Mar 2027', '2027-03-16'],
    ['16-Mar-27', '2027-03-16'],
    ['March 16, 2027', '2027-03-16'],
    ['2028-02-29', '2028-02-29'],
  ])('"%s" says itself how it is read', (text, date) => {
    expect(readDate(text, null)).toBe(date);
    expect(guessDateOrder([text]).example).toBeNull();
  });

  test.each(['2027-02-29', '2027-13-01', '16 Foo 2027', 'yesterday', '', '3/4', '99999999'])(
    '"%s" is no date',
    (text) => {
      for (const order of [null, 'mdy', 'dmy', 'ymd'] as const) expect(readDate(text, order)).toBeNull();
    },
  );

  test('three numbers are read in the order that was chosen, and in none without', () => {
    expect(readDate('3/4/2027', 'mdy')).toBe('2027-03-04');
    expect(readDate('3/4/2027', 'dmy')).toBe('2027-04-03');
    expect(readDate('3/4/2027', null)).toBeNull();
    expect(readDate('27-03-04', 'ymd')).toBe('2027-03-04');
    expect(readDate('3/16/99', 'mdy')).toBe('1999-03-16');
  });

  test('a day above twelve settles the order', () => {
    expect(guessDateOrder(['3/4/2027', '3/16/2027'])).toEqual({ order: 'mdy', example: null });
    expect(guessDateOrder(['3.4.2027', '16.3.2027'])).toEqual({ order: 'dmy', example: null });
  });

  test('a typing fault does not turn the order of all the others', () => {
    expect(guessDateOrder(['1/15/2027', '1/16/2027', '1/17/2027', '18/1/2027'])).toEqual({
      order: 'mdy',
      example: null,
    });
  });

  test('where nothing settles it, it is asked with an example of each reading', () => {
    expect(guessDateOrder(['3/4/2027', '3/5/2027'])).toEqual({
      order: null,
      example: {
        text: '3/4/2027',
        readings: [
          { order: 'mdy', date: '2027-03-04' },
          { order: 'dmy', date: '2027-04-03' },
        ],
      },
    });
    expect(guessDateOrder(['03-04-05']).example?.readings.map((each) => each.date)).toEqual([
      '2005-03-04',
      '2005-04-03',
      '2003-04-05',
    ]);
    // One date that only fits the one order and one that only fits the other.
    expect(guessDateOrder(['1/16/2027', '17/1/2027', '3/4/2027']).order).toBeNull();
  });

  test('whoever wrote it, the same order reads it again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }), (day) => {
        const date = dateOfDay(day);
        const [year = '', month = '', last = ''] = date.split('-');
        expect(readDate(`${Number(month)}/${Number(last)}/${year}`, 'mdy')).toBe(date);
        expect(readDate(`${last}.${month}.${year}`, 'dmy')).toBe(date);
        expect(readDate(`${year}${month}${last}`, null)).toBe(date);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
