import { expect, test } from 'vitest';
import { formatMonthDay, parseMonthDay } from '../../../core/units/index.ts';

test.each([
  ['15 February', '02-15'],
  ['Feb 15', '02-15'],
  ['feb. 15th', '02-15'],
  ['02-15', '02-15'],
  ['2/15', '02-15'],
  ['29 Feb', '02-29'],
  ['1 sept', '09-01'],
])('"%s" is %s', (text, expected) => expect(parseMonthDay(text)).toEqual({ ok: true, value: expected }));

test.each([
  ['', 'quantity-unreadable'],
  ['spring', 'quantity-unreadable'],
  ['15 Foo', 'quantity-unreadable'],
  ['30 Feb', 'quantity-out-of-range'],
  ['13-01', 'quantity-out-of-range'],
  ['15/2', 'quantity-out-of-range'],
])('"%s" is refused', (text, code) => expect(parseMonthDay(text)).toMatchObject({ ok: false, error: { code } }));

test.each([
  ['15/2', '02-15'],
  ['3/4', '04-03'],
  ['02-15', '02-15'],
  ['15 Feb', '02-15'],
])('with the day first "%s" is %s', (text, expected) =>
  expect(parseMonthDay(text, undefined, 'day-first')).toEqual({ ok: true, value: expected }),
);

test('is written in the order of dates', () => {
  expect(formatMonthDay('02-05')).toBe('February 5');
  expect(formatMonthDay('02-05', 'day-first')).toBe('5 February');
  expect(formatMonthDay('13-05')).toBe('13-05');
});

test('what is written can be read again', () => {
  for (const day of ['01-01', '02-29', '05-31', '12-31']) {
    for (const order of ['month-first', 'day-first'] as const)
      expect(parseMonthDay(formatMonthDay(day, order), undefined, order)).toEqual({ ok: true, value: day });
  }
});
