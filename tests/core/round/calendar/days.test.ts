import { describe, expect, test } from 'vitest';
import { fallsOn, weekdayOf } from '../../../../core/round/calendar/index.ts';

describe('days of the week', () => {
  // From any printed calendar; 29 February 2000 was a Tuesday.
  test.each([
    ['1970-01-01', 'thursday'],
    ['1969-12-31', 'wednesday'],
    ['2000-02-29', 'tuesday'],
    ['2027-03-16', 'tuesday'],
    ['2027-03-20', 'saturday'],
    ['2027-03-21', 'sunday'],
  ] as const)('%s is a %s', (date, weekday) => {
    expect(weekdayOf(date)).toBe(weekday);
    expect(fallsOn(date, [weekday])).toBe(true);
    expect(fallsOn(date, ['friday', 'monday'])).toBe(false);
    expect(fallsOn(date, undefined)).toBe(true);
  });
});
