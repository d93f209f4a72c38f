import { describe, expect, it } from 'vitest';
import { fallsOn } from '../../../../core/round/calendar/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

describe('days of the week', () => {
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
