import { describe, expect, test } from 'vitest';
import { type Book, readingOf, recordFault } from '../../../../core/book/index.ts';
import { applyAction } from '../../../../core/edit/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { lawnsBySite, PUBLISHED_TIMINGS, timingSeason } from '../../../../core/round/timing/index.ts';
import { formatterFor } from '../../../../renderer/format/index.ts';
import { roundLawns } from '../../../../renderer/rooms/round/when/round-lawns.ts';
import { reasonsOf } from '../../../../renderer/rooms/round/when/site-lawns.tsx';
import { isOpen, momentWords } from '../../../../renderer/rooms/round/when/timing-chart.tsx';
import { completed, draftOf, emptyDraft, missingOf } from '../../../../renderer/rooms/round/when/timing-draft.ts';
import { withoutTiming } from '../../../../renderer/rooms/round/when/timing-edits.ts';
import { dayAt, withTypedDay } from '../../../../renderer/rooms/round/when/typed-days.ts';
import { footingWords, todayWords, windowWords } from '../../../../renderer/rooms/round/when/when-words.ts';
import { bookWith, countTiming } from '../../../core/round/timing/stations.ts';
import { smallBook } from '../../fake-host.ts';

const us = formatterFor(readingOf({ units: 'us' }));

describe('a timing that is being made', () => {
  test.each(['calendar', 'soil-temperature', 'degree-days'] as const)(
    'by %s has no figure that nobody gave',
    (kind) => {
      const draft = emptyDraft(kind);
      expect(missingOf(draft).length).toBeGreaterThan(2);
      expect(completed(draft, 't')).toMatchObject({ ok: false, error: { code: 'quantity-unreadable' } });
    },
  );

  test('from a published figure lacks what its source leaves open, and nothing else', () => {
    const missing = Object.fromEntries(PUBLISHED_TIMINGS.map((each) => [each.id, missingOf(draftOf(each))]));
    expect(missing['michigan-degree-days']).toEqual([]);
    expect(missing['purdue-soil']).toEqual(['looked for from']);
    expect(missing['purdue-degree-days']).toEqual(['counted from', 'opens at']);
    expect(missing['seeding-soil']).toEqual(['depth', 'looked for from']);
    expect(missing['kansas-calendar']).toEqual(['opens on']);
  });

  test('is what the book takes once everything is there; what is not set is left out', () => {
    const draft = draftOf(PUBLISHED_TIMINGS[0]!);
    const made = completed({ ...draft, bestAt: undefined }, 't');
    if (!made.ok) throw new Error(made.error.detail);
    expect(recordFault('timings', made.value, 'timing')).toBeNull();
    expect(Object.keys(made.value)).not.toContain('bestAt');
    expect(made.value).toMatchObject({ kind: 'degree-days', baseF: 32, opensAt: 250, closesAt: 500, from: '02-15' });
    expect(made.value.source).toContain('Michigan State');
  });
});

test('a timing that is removed goes out of every round and programme, as one step that can be taken back', () => {
  const [one, other] = [countTiming({ id: 'one' }), countTiming({ id: 'other' })];
  const round = {
    name: 'r',
    treatmentIds: ['t'],
    skipped: [],
    dates: ['2027-03-20'],
    rigIds: ['rig'],
    wetGround: false,
  };
  const step = { name: 's', treatmentIds: ['t'], from: '03-01', to: '04-15' };
  const book: Book = {
    ...smallBook(),
    timings: [one, other],
    rounds: [
      { ...round, id: 'r1', propertyIds: 'all', timingId: 'one' },
      { ...round, id: 'r2', propertyIds: 'all', timingId: 'other' },
    ],
    programmes: [
      {
        id: 'p',
        name: 'p',
        note: '',
        steps: [
          { ...step, id: 's1', timingId: 'one' },
          { ...step, id: 's2' },
        ],
      },
    ],
  };
  const done = applyAction(book, withoutTiming(book, one));
  if (!done.ok) throw new Error(done.error.detail);
  expect(done.value.book.timings.map((each) => each.id)).toEqual(['other']);
  expect(done.value.book.rounds.map((each) => each.timingId)).toEqual([undefined, 'other']);
  expect(JSON.stringify(done.value.book.programmes)).not.toContain('timingId');
  const back = applyAction(done.value.book, done.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
});

describe('lawns of a round', () => {
  const book = smallBook();
  const round = {
    id: 'r',
    name: 'r',
    treatmentIds: ['t'],
    propertyIds: 'all' as const,
    skipped: [],
    dates: ['2027-03-20'],
    rigIds: ['rig'],
    wetGround: false,
  };
  const areaOf = () => null;
  const day = (date: string, propertyId: string) => ({ date, stops: [{ propertyId }] });
  const plan = { days: [day('2027-03-20', 'p1'), day('2027-03-22', 'p1')] } as unknown as Plan;

  test('have the last planned day; the promised one where nothing is planned', () => {
    expect(roundLawns(book, round, plan, areaOf)[0]).toMatchObject({ plannedOn: '2027-03-22', doneOn: null });
    const promised = { ...round, promised: [{ propertyId: 'p1', on: '2027-03-25' }] };
    expect(roundLawns(book, promised, null, areaOf)[0]?.plannedOn).toBe('2027-03-25');
    expect(roundLawns(book, promised, plan, areaOf)[0]?.plannedOn).toBe('2027-03-22');
    expect(roundLawns(book, { ...round, skipped: [{ propertyId: 'p1', reason: 'seeded' }] }, null, areaOf)).toEqual([]);
  });

  test('that were done are done; those that were left out are not', () => {
    const visit = { id: 'v', on: '2027-03-19', roundId: 'r', rigId: 'rig', propertyId: 'p1', note: '' };
    const done = { ...book, visits: [{ ...visit, outcome: { kind: 'done' as const, tasks: [] } }] };
    expect(roundLawns(done, round, null, areaOf)[0]?.doneOn).toBe('2027-03-19');
    const skipped = { ...book, visits: [{ ...visit, outcome: { kind: 'skipped' as const, reason: 'dog' } }] };
    expect(roundLawns(skipped, round, null, areaOf)[0]?.doneOn).toBeNull();
  });
});

describe('in words', () => {
  const book = bookWith('2026-01-01', '2027-03-10', (date) => (date === '2027-03-05' ? null : [60, 50, null]));
  const season = timingSeason(book, countTiming(), '2027-03-15');
  const result = season.at(0);

  test('the window says what was measured and what is expected', () => {
    expect(windowWords(result.state, us)).toEqual({
      opens: 'Sat Mar 20, expected',
      best: '–',
      last: 'Thu Apr 8, expected',
    });
    expect(todayWords(result, '2027-03-11', us)).toBe('Opens Saturday, March 20, 2027 (expected).');
    expect(todayWords(result, '2027-03-25', us)).toBe('Open now, until Thursday, April 8, 2027 (expected).');
    expect(todayWords(result, '2027-04-09', us)).toBe('Over: the last useful day was Thursday, April 8, 2027.');
    expect(todayWords(season.at(-20), '2027-03-25', us)).toBe('Not this year: the opening is not reached.');
  });

  test('the footing counts bridged days and names the joint', () => {
    expect(footingWords(result, '2027-03-11', us)).toEqual([
      'Yard: measured up to Wednesday, March 10, 2027.',
      'Days ahead are the normal curve of 1 earlier year (2026): the mean of the years for each day, then over 7 days on each side. It is not shifted to meet the measured days, which lately lay on it.',
      '1 day bridged by a straight line: Fri Mar 5.',
    ]);
    expect(footingWords(result, '2027-03-01', us)[0]).toContain('what comes after today counts as measured too');
  });

  test('a day on the picture says its figure and whether it is open', () => {
    const days = { workdays: ['2027-03-19', '2027-03-20'], planned: new Map([['2027-03-20', 3]]) };
    expect(momentWords(result, '2027-03-20', days, us)).toBe(
      'Saturday, March 20, 2027, 100 °F days, expected, open, 3 lawns planned',
    );
    expect(momentWords(result, '2027-03-19', days, us)).toBe(
      'Friday, March 19, 2027, 95 °F days, expected, not open, a working day of the round',
    );
    expect(isOpen(result, '2027-03-19')).toBe(false);
    expect(isOpen(result, '2027-04-08')).toBe(true);
    expect(isOpen(result, '2027-04-09')).toBe(false);
  });

  test('lawns that miss it are told with one reason for many', () => {
    const [property] = smallBook().properties;
    const lawns = ['a', 'b', 'c'].map((id) => ({
      property: { ...property!, id, name: id },
      plannedOn: id === 'c' ? '2027-03-30' : '2027-04-12',
      doneOn: null,
    }));
    const groups = lawnsBySite(season, undefined, lawns, '2027-03-11', '2027-04-12');
    expect(
      reasonsOf(groups, (each) => each.verdict === 'too-late', us).map((each) => [each.why, each.lawns.length]),
    ).toEqual([['planned on Mon Apr 12, after the last useful day, Thu Apr 8', 2]]);
  });
});

describe('days that are typed', () => {
  test('go to their place in the year; a day without figures goes away', () => {
    const one = withTypedDay([], 'Yard', ['2027-03-02', 60, 40, null], 'new');
    expect(one).toEqual({ id: 'new', station: 'Yard', source: 'typed', days: [['2027-03-02', 60, 40, null]] });
    const two = withTypedDay([one], 'Yard', ['2027-03-01', 58, null, null], 'other');
    expect(two.id).toBe('new');
    expect(two.days.map((each) => each[0])).toEqual(['2027-03-01', '2027-03-02']);
    expect(dayAt([two], 'Yard', '2027-03-01')).toEqual(['2027-03-01', 58, null, null]);
    expect(dayAt([two], 'Hill', '2027-03-01')).toEqual(['2027-03-01', null, null, null]);
    expect(withTypedDay([two], 'Yard', ['2027-03-01', null, null, null], 'x').days.length).toBe(1);
    expect(withTypedDay([two], 'Yard', ['2028-03-01', 58, null, null], 'next').id).toBe('next');
  });
});
