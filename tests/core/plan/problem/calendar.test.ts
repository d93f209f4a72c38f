import { describe, expect, it } from 'vitest';
import { fallsOn } from '../../../../core/plan/problem/calendar.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

describe('days of the week', () => {
  // Days of the week from any printed calendar; 29 February 2000 was a Tuesday.
  it.each([
    ['1970-01-01', 'thursday'],
    ['1969-12-31', 'wednesday'],
    ['2000-02-29', 'tuesday'],
    ['2027-03-16', 'tuesday'],
    ['2027-03-20', 'saturday'],
    ['2027-03-21', 'sunday'],
  ] as const)('%s is a %s', (date, weekday) => {
    expect(fallsOn(date, [weekday])).toBe(true);
    expect(fallsOn(date, ['friday', 'monday'])).toBe(false);
    expect(fallsOn(date, undefined)).toBe(true);
  });

  it('of a customer close the other days of a round to the visit', () => {
    const book = sampleBook('four-day-round');
    const [first] = book.properties;
    const properties = book.properties.map((each) =>
      each === first ? { ...each, weekdays: ['wednesday' as const] } : each,
    );
    const problem = problemOf({ ...book, properties });
    const allowed = (propertyId: string): string[] =>
      problem.dates.filter(
        (_, day) => problem.jobs.find((job) => job.propertyId === propertyId)?.dayAllowed[day] === 1,
      );
    expect(allowed(first?.id ?? '')).toEqual(problem.dates.filter((date) => fallsOn(date, ['wednesday'])));
    expect(allowed(first?.id ?? '').length).toBe(1);
    expect(allowed(book.properties[1]?.id ?? '')).toEqual(problem.dates);
  });
});
