import { describe, expect, test } from 'vitest';
import { type Calendar, emptyBook, type Property } from '../../../../core/book/index.ts';
import { calendarOf, earliestWorkDay, lawnClosedWhy, noticeDate } from '../../../../core/round/calendar/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const [plain] = sampleBook('residential-day').properties as readonly [Property];
const lawn = (changes: Partial<Property>): Property => ({ ...plain, ...changes });
const calendar: Calendar = { ...calendarOf(emptyBook('b', 'Book')), noticeDays: 2 };

describe('notice', () => {
  test('is given so many days before the work, of the lawn or else of the calendar', () => {
    expect(noticeDate(plain, calendar, '2027-03-01')).toBe('2027-02-27');
    expect(noticeDate(plain, calendar, '2028-03-01')).toBe('2028-02-28');
    expect(noticeDate(lawn({ noticeDays: 7 }), calendar, '2027-01-03')).toBe('2026-12-27');
    expect(noticeDate(lawn({ noticeDays: 0 }), calendar, '2027-03-01')).toBeNull();
  });

  test('given today is for the earliest day', () => {
    expect(earliestWorkDay(plain, calendar, '2027-12-31')).toBe('2028-01-02');
    expect(earliestWorkDay(lawn({ noticeDays: 0 }), calendar, '2027-12-31')).toBe('2027-12-31');
  });
});

describe('days that a customer closes', () => {
  test('are days of the week, dates, and those that are not allowed, each with why', () => {
    const shut = lawn({
      closed: [
        { kind: 'weekday', weekday: 'wednesday', why: 'mowing' },
        { kind: 'date', on: '2027-03-18', why: 'wedding' },
        { kind: 'weekday', weekday: 'monday', why: '' },
      ],
    });
    expect(lawnClosedWhy(shut, '2027-03-17')).toBe('closed: mowing');
    expect(lawnClosedWhy(shut, '2027-03-18')).toBe('closed: wedding');
    expect(lawnClosedWhy(shut, '2027-03-15')).toBe('the customer’s closed day');
    expect(lawnClosedWhy(shut, '2027-03-19')).toBeNull();
    expect(lawnClosedWhy(lawn({ weekdays: ['tuesday', 'friday'] }), '2027-03-15')).toBe(
      'the customer allows Tuesday, Friday alone',
    );
  });

  test('last as long as a hold, its last day counted', () => {
    const held = lawn({ hold: { why: 'seeding', until: '2027-04-10' } });
    expect(lawnClosedWhy(held, '2027-04-10')).toBe('seeded to 2027-04-10');
    expect(lawnClosedWhy(held, '2027-04-11')).toBeNull();
    expect(lawnClosedWhy(lawn({ hold: { why: 'on-hold' } }), '2099-01-01')).toBe('on hold');
  });
});
