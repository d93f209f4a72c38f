import { describe, expect, test } from 'vitest';
import type { Book, Round } from '../../../../core/book/index.ts';
import { calendarOf } from '../../../../core/round/calendar/index.ts';
import {
  dayFacts,
  dayTags,
  freeDay,
  monthsOf,
  weekFrom,
  weeksOf,
} from '../../../../renderer/rooms/round/calendar/day-facts.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const [round] = sample.rounds as readonly [Round];
const first = sample.properties[0]?.id ?? '';

describe('months', () => {
  test('run from the first date to the last, over the end of a year', () => {
    expect(monthsOf(['2028-02-29', '2027-12-31'])).toEqual(['2027-12', '2028-01', '2028-02']);
    expect(monthsOf([])).toEqual([]);
  });

  test('are laid out in weeks from Sunday, a leap day among them', () => {
    // 1 February 2028 is a Tuesday, the 29th too; February 2026 begins on a Sunday and fills four weeks.
    const weeks = weeksOf('2028-02', 'sunday');
    expect(weeks).toHaveLength(5);
    expect(weeks[0]).toEqual([null, null, '2028-02-01', '2028-02-02', '2028-02-03', '2028-02-04', '2028-02-05']);
    expect(weeks[4]?.filter((each) => each !== null)).toEqual(['2028-02-27', '2028-02-28', '2028-02-29']);
    expect(weeksOf('2026-02', 'sunday')).toHaveLength(4);
    expect(
      weeksOf('2027-03', 'sunday')
        .flat()
        .filter((each) => each !== null),
    ).toHaveLength(31);
  });

  test('or in weeks from Monday', () => {
    // 1 February 2027 is a Monday and the month has 28 days.
    const weeks = weeksOf('2027-02', 'monday');
    expect(weeks).toHaveLength(4);
    expect([weeks[0]?.[0], weeks[3]?.[6]]).toEqual(['2027-02-01', '2027-02-28']);
    expect(weekFrom('monday')[0]).toBe('monday');
    expect([weekFrom('sunday')[0], weekFrom('sunday')[6]]).toEqual(['sunday', 'saturday']);
  });
});

describe('the days of a round', () => {
  const dates = ['2027-03-15', '2027-03-16', '2027-03-17', '2027-03-18'];
  const book: Book = {
    ...sample,
    calendar: {
      ...calendarOf(sample),
      holidays: [{ on: '2027-03-16', name: 'Town day' }],
      rainShare: 0.3,
      noticeDays: 3,
    },
    products: sample.products.map((each) => ({ ...each, label: { ...each.label, mostWindMph: 10 } })),
    weather: [
      {
        id: 'w',
        on: '2027-03-17',
        source: '',
        hours: Array.from({ length: 24 }, (_, hour) => ({ hour, windMph: 22 })),
      },
    ],
  };
  const asked: Round = { ...round, dates, promised: [{ propertyId: first, on: '2027-03-15' }] };
  const facts = dayFacts(book, asked, null);

  test('are worked, free, on hold or held back, each with why', () => {
    expect(dates.map((date) => facts.get(date)?.kind)).toEqual(['worked', 'holiday', 'on-hold', 'held-back']);
    expect(facts.get('2027-03-16')?.why).toBe('holiday (Town day)');
    expect(facts.get('2027-03-17')?.why).toMatch(/wind 22 mph/);
    expect(facts.get('2027-03-15')?.promised).toBe(1);
  });

  test('have the day on which people are to be told among them', () => {
    const told = facts.get('2027-03-12');
    expect(told?.tell).toEqual([sample.properties[0]?.name]);
    expect(told?.kind).toBe('free');
    expect(dayTags(told ?? freeDay(book, '2027-03-12'))).toEqual(['tell 1']);
  });

  test('beside the round are free or not worked', () => {
    expect([freeDay(book, '2027-03-19').kind, freeDay(book, '2027-03-20').kind]).toEqual(['free', 'off']);
  });
});
