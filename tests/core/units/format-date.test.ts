import { expect, test } from 'vitest';
import { formatDate } from '../../../core/units/index.ts';

/** 16 March 2027 is a Tuesday, February 29, 2028 too (ISO 8601 calendar, worked out by Zeller's rule). */
test.each([
  ['2027-03-16', 'long', 'Tuesday, March 16, 2027'],
  ['2027-03-16', 'table', 'Tue Mar 16, 2027'],
  ['2027-03-16', 'short', 'Tue Mar 16'],
  ['2028-02-29', 'table', 'Tue Feb 29, 2028'],
  ['not a date', 'long', 'not a date'],
  ['2027-13-01', 'short', '2027-13-01'],
] as const)('%s, %s: %s', (date, length, words) => {
  expect(formatDate(date, length)).toBe(words);
});

test.each([
  ['2027-03-16', 'long', 'Tuesday, 16 March 2027'],
  ['2027-03-16', 'table', 'Tue 16 Mar 2027'],
  ['2027-03-16', 'short', 'Tue 16 Mar'],
  ['not a date', 'table', 'not a date'],
] as const)('with the day first: %s, %s: %s', (date, length, words) => {
  expect(formatDate(date, length, 'day-first')).toBe(words);
});
