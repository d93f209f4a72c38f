import { describe, expect, test, vi } from 'vitest';
import type { Book, Property, Round } from '../../../../core/book/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { plannedDays } from '../../../../core/plan/result/index.ts';
import { calendarOf } from '../../../../core/round/calendar/index.ts';
import { weatherOn, withHoliday, withHour } from '../../../../renderer/rooms/round/calendar/calendar-edits.ts';
import {
  newProgramme,
  newStep,
  withoutStep,
  withStep,
} from '../../../../renderer/rooms/round/programmes/programme-edits.ts';
import { withPromise } from '../../../../renderer/rooms/round/round-edits.ts';
import { keptPromises, withDate } from '../../../../renderer/stores/index.ts';
import { sampleBook } from '../../../support/samples.ts';

vi.mock('lucide-react', () => ({}));

const book: Book = sampleBook('residential-day');
const [round] = book.rounds as readonly [Round];
const [first, second] = book.properties as readonly [Property, Property];

/** A plan with these properties on these dates; no more of a plan is looked at here. */
function planWith(days: readonly (readonly [string, readonly string[]])[]): Plan {
  const made = days.map(([date, ids]) => ({ date, stops: ids.map((propertyId) => ({ propertyId })) }));
  return { roundId: round.id, days: made } as unknown as Plan;
}

describe('days of a round', () => {
  const days: Round = { ...round, dates: ['2027-03-15', '2027-03-17'] };

  test('go in and out in order; the last one stays', () => {
    expect(withDate(days, '2027-03-16', true)).toEqual(['2027-03-15', '2027-03-16', '2027-03-17']);
    expect(withDate(days, '2027-03-15', true)).toEqual(['2027-03-15', '2027-03-17']);
    expect(withDate(days, '2027-03-15', false)).toEqual(['2027-03-17']);
    expect(withDate({ ...days, dates: ['2027-03-15'] }, '2027-03-15', false)).toBeNull();
  });

  test('are promised once for each lawn', () => {
    const promised = withPromise(
      { ...days, promised: [{ propertyId: first.id, on: '2027-03-15' }] },
      first,
      '2027-03-17',
    );
    expect(promised).toEqual([{ propertyId: first.id, on: '2027-03-17' }]);
    expect(withPromise({ ...days, promised: promised ?? [] }, first, null)).toEqual([]);
  });

  test('that a plan keeps are those on which it has the lawn', () => {
    const promised = [
      { propertyId: first.id, on: '2027-03-15' },
      { propertyId: second.id, on: '2027-03-17' },
    ];
    const plan = planWith([['2027-03-15', [first.id, second.id]]]);
    expect(keptPromises({ ...days, promised }, plan)).toEqual([first.id]);
    expect(keptPromises(days, plan)).toEqual([]);
  });

  test('of a plan are the last ones on which it has each lawn', () => {
    const plan = planWith([
      ['2027-03-17', [first.id]],
      ['2027-03-15', [first.id, second.id]],
    ]);
    expect(plannedDays([plan])).toEqual({ [round.id]: { [first.id]: '2027-03-17', [second.id]: '2027-03-15' } });
  });
});

describe('the calendar', () => {
  test('has a holiday once, in order, and lets it go', () => {
    const calendar = { ...calendarOf(book), holidays: [{ on: '2027-07-05', name: 'Independence Day' }] };
    expect(withHoliday(calendar, '2027-05-31', '').map((each) => each.on)).toEqual(['2027-05-31', '2027-07-05']);
    expect(withHoliday(calendar, '2027-07-05', 'Fourth')).toEqual([{ on: '2027-07-05', name: 'Fourth' }]);
    expect(withHoliday(calendar, '2027-07-05', null)).toEqual([]);
  });

  test('has weather by the hour; an hour without figures goes', () => {
    const typed = withHour(weatherOn(book, '2027-03-15'), 9, 'windMph', 12);
    expect(typed).toMatchObject({ on: '2027-03-15', source: 'typed', hours: [{ hour: 9, windMph: 12 }] });
    const more = withHour(withHour(typed, 8, 'airF', 55), 9, 'rainIn', 0);
    expect(more.hours).toEqual([
      { hour: 8, airF: 55 },
      { hour: 9, windMph: 12, rainIn: 0 },
    ]);
    expect(withHour(more, 8, 'airF', null).hours).toEqual([{ hour: 9, windMph: 12, rainIn: 0 }]);
  });
});

describe('a programme', () => {
  test('grows by steps of the month after', () => {
    const programme = newProgramme(book);
    expect(programme.steps).toHaveLength(1);
    const next = newStep(book, programme.steps);
    expect([programme.steps[0]?.from, next.from]).toEqual(['03-01', '04-01']);
    const december = [{ ...next, to: '12-28' }];
    expect(newStep(book, december).from).toBe('01-01');
    expect(next.id).not.toBe(programme.steps[0]?.id);
  });

  test('loses what is taken from a step, and whoever followed a removed step follows none', () => {
    const programme = newProgramme(book);
    const [step] = programme.steps;
    const later = { ...newStep(book, programme.steps), after: { stepId: step?.id ?? '', leastDays: 30 } };
    const two = { ...programme, steps: [...programme.steps, later] };
    expect(withStep(two, later.id, { after: undefined }).steps[1]).not.toHaveProperty('after');
    expect(withStep(two, later.id, { from: '05-01' }).steps[1]).toMatchObject({ from: '05-01', after: later.after });
    expect(withoutStep(two, step?.id ?? '').steps).toEqual([expect.not.objectContaining({ after: later.after })]);
  });
});
