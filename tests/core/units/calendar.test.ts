import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isCalendarDate } from '../../../core/units/index.ts';

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
