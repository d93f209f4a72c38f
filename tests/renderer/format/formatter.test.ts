import { expect, test } from 'vitest';
import { readingOf } from '../../../core/book/index.ts';
import { counted, formatterFor } from '../../../renderer/format/index.ts';

test('dates and moments are told with their weekday, moments on this machine’s clock', () => {
  // 16 March 2027 is a Tuesday.
  const us = formatterFor(readingOf({ units: 'us' }));
  expect([us.date('2027-03-16'), us.longDate('2027-03-16')]).toEqual(['Tue Mar 16', 'Tuesday, March 16, 2027']);
  expect(us.date('someday')).toBe('someday');
  const moment = new Date(2027, 2, 16, 22, 5).toISOString();
  expect(us.moment(moment)).toBe('Tue Mar 16, 2027, 10:05 pm');
  expect(formatterFor(readingOf({ units: 'metric' })).moment(moment)).toBe('Tue Mar 16, 2027, 22:05');
  expect([us.timeOf(moment), us.timeOf('none'), us.moment('none')]).toEqual(['10:05 pm', '', '']);
  expect(us.dateInYear('2027-03-16')).toBe('Tue Mar 16, 2027');
});

test('counts agree with their noun', () => {
  expect(counted(1, 'lawn')).toBe('1 lawn');
  expect(counted(2000, 'lawn')).toBe('2,000 lawns');
  expect(counted(2, 'branch', 'branches')).toBe('2 branches');
});

test('levels are told in the unit of their line, in either system', () => {
  expect(formatterFor(readingOf({ units: 'us' })).level(12.34, 'gal')).toBe('12.3 gal');
  expect(formatterFor(readingOf({ units: 'us' })).level(50, 'lb')).toBe('50.0 lb');
  // 10 gal are 37.85 L.
  expect(formatterFor(readingOf({ units: 'metric' })).level(10, 'gal')).toBe('37.9 L');
});

test('the clock is the one that is read, as on the sheets', () => {
  // 14 h 26 min after midnight.
  const sec = (14 * 60 + 26) * 60;
  expect(formatterFor(readingOf({ units: 'us' })).clock(sec)).toBe('2:26 pm');
  expect(formatterFor(readingOf({ units: 'metric' })).clock(sec)).toBe('14:26');
});
