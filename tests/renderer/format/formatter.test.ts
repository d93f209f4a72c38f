import { expect, test } from 'vitest';
import { clockOf, counted, dateWords, formatterFor } from '../../../renderer/format/index.ts';

test('dates are told with their weekday', () => {
  // 16 March 2027 is a Tuesday.
  expect(dateWords('2027-03-16', 'short')).toBe('Tue 16 Mar');
  expect(dateWords('2027-03-16', 'long')).toBe('Tuesday, 16 March 2027');
  expect(dateWords('someday', 'short')).toBe('someday');
});

test('a moment is told on this machine’s clock', () => {
  const moment = new Date(2027, 2, 16, 10, 5);
  expect(clockOf(moment.toISOString())).toBe('10:05');
  expect(clockOf('no moment')).toBe('');
});

test('counts agree with their noun', () => {
  expect(counted(1, 'lawn')).toBe('1 lawn');
  expect(counted(2000, 'lawn')).toBe('2,000 lawns');
  expect(counted(2, 'branch', 'branches')).toBe('2 branches');
});

test('levels are told in the unit of their line, in either system', () => {
  expect(formatterFor('us').level(12.34, 'gal')).toBe('12.3 gal');
  expect(formatterFor('us').level(50, 'lb')).toBe('50.0 lb');
  // 10 gal are 37.85 L.
  expect(formatterFor('metric').level(10, 'gal')).toBe('37.9 L');
});

test('the clock is that of the unit system, as on the sheets', () => {
  // 14 h 26 min after midnight.
  const sec = (14 * 60 + 26) * 60;
  expect(formatterFor('us').clock(sec)).toBe('2:26 pm');
  expect(formatterFor('metric').clock(sec)).toBe('14:26');
});
