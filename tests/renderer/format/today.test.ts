import { expect, test } from 'vitest';
import { todayHere } from '../../../renderer/format/index.ts';

test('today is the date on the clock of the machine', () => {
  expect(todayHere(new Date(2027, 2, 9, 23, 59))).toBe('2027-03-09');
  expect(todayHere(new Date(2028, 1, 29, 0, 0))).toBe('2028-02-29');
});
