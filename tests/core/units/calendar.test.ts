import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, dateInYear, dateOfDay, dayNumber, daysBetween, isCalendarDate } from '../../../core/units/index.ts';

test.each([
  '2027-02-29',
  '2027-02-30',
  '2027-04-31',
  // A century that 400 does not divide is no leap year.
  '2100-02-29',
  '2027-00-10',
  '2027-13-01',
  '2027-01-00',
  '2027-01-32',
  '2027-1-2',
  'tomorrow',
  '',
])('"%s" is no day', (date) => expect(isCalendarDate(date)).toBe(false));

test.each(['2027-02-28', '2028-02-29', '2000-02-29', '2027-04-30', '2027-12-31'])('%s is a day', (date) =>
  expect(isCalendarDate(date)).toBe(true),
);

test('agrees with the calendar of the machine: a day that does not exist rolls over into the next month', () => {
  const two = (figure: number): string => String(figure).padStart(2, '0');
  const any = fc.tuple(
    fc.integer({ min: 1900, max: 2400 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ max: 31, min: 1 }),
  );
  fc.assert(
    fc.property(any, ([year, month, day]) => {
      const rolled = new Date(Date.UTC(year, month - 1, day)).getUTCDate();
      expect(isCalendarDate(`${year}-${two(month)}-${two(day)}`)).toBe(rolled === day);
    }),
    { numRuns: 2000, seed: 7 },
  );
});

test('days are counted from 1970-01-01, over leap days and back', () => {
  expect(dayNumber('1970-01-01')).toBe(0);
  // 57 years of 365 days, and the leap days of 1972 to 2024: fourteen.
  expect(dayNumber('2027-01-01')).toBe(57 * 365 + 14);
  expect(dateOfDay(-1)).toBe('1969-12-31');
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  expect(addDays('2027-02-28', 1)).toBe('2027-03-01');
  expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
  expect(daysBetween('2028-02-01', '2028-03-01')).toBe(29);
  expect(daysBetween('2027-03-01', '2027-02-01')).toBe(-28);
  // In spring a clock in the United States leaves out an hour on 14 March 2027; a day is a day.
  expect(daysBetween('2027-03-13', '2027-03-15')).toBe(2);
  expect(dayNumber('2027-02-30')).toBe(dayNumber('2027-03-02'));
});

test('the 29th of February is the last of the month where a year has none', () => {
  expect(dateInYear('02-29', 2027)).toBe('2027-02-28');
  expect(dateInYear('02-29', 2028)).toBe('2028-02-29');
  expect(dateInYear('03-16', 2027)).toBe('2027-03-16');
});

test('a number of a day leads back to it', () => {
  fc.assert(
    fc.property(fc.integer({ min: -40_000, max: 200_000 }), (number) => {
      const date = dateOfDay(number);
      expect(isCalendarDate(date)).toBe(true);
      expect(dayNumber(date)).toBe(number);
    }),
    { numRuns: 500, seed: 11 },
  );
});
