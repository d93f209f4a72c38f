import { describe, expect, test } from 'vitest';
import type { Book, Programme, ProgrammeStep, Property, Round, Visit } from '../../../../core/book/index.ts';
import { copiedToYear, seasonRounds, splitSpans } from '../../../../core/round/programme/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('four-day-round');
const [template] = sample.rounds as readonly [Round];
const treatmentIds = template.treatmentIds;
const rigIds = template.rigIds;
const step = (id: string, from: string, to: string, more: Partial<ProgrammeStep> = {}): ProgrammeStep => ({
  id,
  name: `Step ${id}`,
  treatmentIds,
  from,
  to,
  ...more,
});
const programme = (...steps: readonly ProgrammeStep[]): Programme => ({ id: 'p', name: 'Standard', steps, note: '' });
const freshId = (taken: readonly { readonly id: string }[]): string => `r${taken.length}`;
const made = (book: Book, of: Programme, year = 2027) => seasonRounds(book, of, year, rigIds, freshId);

describe('the rounds of a programme in a year', () => {
  test('have the working days of their span and are due on its last day', () => {
    const { rounds, notes } = made(sample, programme(step('1', '03-13', '03-17')));
    // 13 and 14 March 2027 are a weekend.
    expect(rounds).toMatchObject([
      {
        name: 'Step 1 2027',
        dates: ['2027-03-15', '2027-03-16', '2027-03-17'],
        dueDate: '2027-03-17',
        season: { programmeId: 'p', stepId: '1', year: 2027 },
        propertyIds: 'all',
      },
    ]);
    expect(notes).toEqual([]);
  });

  test('end on the last of February, and may run into the next year', () => {
    expect(made(sample, programme(step('1', '02-25', '02-29'))).rounds[0]?.dates.at(-1)).toBe('2027-02-26');
    expect(made(sample, programme(step('1', '02-25', '02-29')), 2028).rounds[0]?.dates.at(-1)).toBe('2028-02-29');
    const winter = made(sample, programme(step('1', '12-30', '01-04'))).rounds[0];
    expect(winter?.dates).toEqual(['2027-12-30', '2027-12-31', '2028-01-03', '2028-01-04']);
    expect(winter?.season?.year).toBe(2027);
  });

  test('keep the days of a split application between the two, whatever the order of the list', () => {
    const second = step('2', '03-15', '05-31', { after: { stepId: '1', leastDays: 35, mostDays: 42 } });
    const { rounds } = made(sample, programme(second, step('1', '03-15', '03-19')));
    const dates = rounds.find((each) => each.season?.stepId === '2')?.dates ?? [];
    // 15 March and 35 days is 19 April; 19 March and 42 days is 30 April.
    expect([dates[0], dates.at(-1)]).toEqual(['2027-04-19', '2027-04-30']);
  });

  test('are not made twice, nor without a day; both are said', () => {
    const of = programme(step('1', '03-15', '03-19'), step('2', '03-13', '03-14'));
    const first = made(sample, of);
    expect(first.rounds).toHaveLength(1);
    expect(first.notes).toEqual(['Step 2: no working day lies from 2027-03-13 to 2027-03-14']);
    const again = made({ ...sample, rounds: [...sample.rounds, ...first.rounds] }, of);
    expect(again.rounds).toEqual([]);
    expect(again.notes[0]).toBe('Step 1: Step 1 2027 is there already');
    expect(made({ ...sample, treatments: [] }, of).notes[0]).toBe('Step 1: the shed has none of its treatments');
  });

  test('come out of steps that follow each other in a ring as well', () => {
    const ring = programme(
      step('1', '03-15', '03-19', { after: { stepId: '2', leastDays: 1 } }),
      step('2', '03-15', '03-19', { after: { stepId: '1', leastDays: 1 } }),
    );
    expect(made(sample, ring).rounds).toHaveLength(2);
  });
});

describe('a split application on one lawn', () => {
  const of = programme(
    step('1', '03-15', '03-19'),
    step('2', '03-15', '05-31', { after: { stepId: '1', leastDays: 35, mostDays: 60 } }),
  );
  const { rounds } = made(sample, of);
  const [first, second] = rounds as readonly [Round, Round];
  const [lawn, other] = sample.properties as readonly [Property, Property];
  const visit = (on: string, outcome: Visit['outcome'], propertyId = lawn.id): Visit => ({
    id: on,
    on,
    roundId: first.id,
    rigId: rigIds[0] ?? '',
    propertyId,
    outcome,
    note: '',
  });
  const span = (visits: readonly Visit[], planned?: Readonly<Record<string, Readonly<Record<string, string>>>>) => {
    const book = { ...sample, programmes: [of], rounds: [first, second], visits };
    return splitSpans(book, second, () => null, planned)(lawn);
  };

  test('follows the day that was recorded, the last one where there are two', () => {
    const done = { kind: 'done', tasks: [] } as const;
    const found = span([visit('2027-03-17', done), visit('2027-03-16', done)], {
      [first.id]: { [lawn.id]: '2027-03-15' },
    });
    expect(found).toMatchObject({ notBefore: '2027-04-21', notAfter: '2027-05-16', isRecorded: true });
    expect(found?.words).toContain('was done there on 2027-03-17');
  });

  test('follows the planned day, or the last day of the round where no plan has the lawn', () => {
    expect(span([], { [first.id]: { [lawn.id]: '2027-03-15' } })).toMatchObject({
      notBefore: '2027-04-19',
      notAfter: '2027-05-14',
      isRecorded: false,
    });
    expect(span([], { [first.id]: { [other.id]: '2027-03-15' } })).toMatchObject({
      notBefore: '2027-04-23',
      notAfter: null,
    });
  });

  test('is not bound where nothing is asked, where it was skipped, or where it was not in the round before', () => {
    expect(span([])).toBeNull();
    expect(span([visit('2027-03-16', { kind: 'skipped', reason: 'gate' })], {})).toBeNull();
    const book = {
      ...sample,
      programmes: [of],
      rounds: [{ ...first, propertyIds: [other.id] }, second],
    };
    expect(splitSpans(book, second, () => null, {})(lawn)).toBeNull();
    expect(splitSpans(book, first, () => null, {})(lawn)).toBeNull();
  });
});

describe('last season’s round for this one', () => {
  const old: Round = {
    ...template,
    name: 'Spring 2026',
    // Tuesday to Thursday, and the Monday after.
    dates: ['2026-05-19', '2026-05-20', '2026-05-21', '2026-05-25'],
    dueDate: '2026-05-29',
    promised: [{ propertyId: sample.properties[0]?.id ?? '', on: '2026-05-20' }],
    skipped: [],
  };

  test('moves by whole weeks to the nearest date, so that the pattern of weekdays stays', () => {
    const copy = copiedToYear(sample, old, 2027, 'new');
    // 19 May 2026 is a Tuesday, 18 May 2027 the nearest one: 364 days.
    expect(copy?.round.dates).toEqual(['2027-05-18', '2027-05-19', '2027-05-20', '2027-05-24']);
    expect(copy?.round).toMatchObject({ id: 'new', name: 'Spring 2027', dueDate: '2027-05-28' });
    expect(copy?.round.promised).toBeUndefined();
    expect(copy?.notes).toEqual(['1 promised day is dropped']);
  });

  test('from a leap day finds its weekday', () => {
    // Tuesday 29 February 2028; the nearest Tuesday to 28 February 2029, a Wednesday, is the 27th.
    const leap = { ...old, dates: ['2028-02-29'], promised: [] };
    expect(copiedToYear(sample, leap, 2029, 'new')?.round.dates).toEqual(['2029-02-27']);
  });

  test('puts a working day at the end for a holiday', () => {
    const calendar = {
      workdays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
      holidays: [{ on: '2027-05-20', name: 'Founders' }],
      rainShare: 0,
      serviceMin: 0,
      noticeDays: 0,
      leastOpenMin: 240,
      clockChange: 'united-states',
    } as const;
    const copy = copiedToYear({ ...sample, calendar }, old, 2027, 'new');
    expect(copy?.round.dates).toEqual(['2027-05-18', '2027-05-19', '2027-05-24', '2027-05-25']);
    expect(copy?.notes[0]).toBe('2027-05-20 is a holiday (Founders); a working day after the last one stands for it');
  });

  test('keeps reasons that may still hold, and drops holds that are over and lawns that are gone', () => {
    const [a, b, c] = sample.properties as readonly [Property, Property, Property];
    const properties = [a, { ...b, hold: { why: 'on-hold' } as const }, c];
    const skipped = [
      { propertyId: a.id, reason: 'new' },
      { propertyId: b.id, reason: 'on hold' },
      { propertyId: c.id, reason: 'treats it himself' },
      { propertyId: 'gone', reason: 'sold' },
    ];
    const copy = copiedToYear({ ...sample, properties }, { ...old, propertyIds: 'all', skipped }, 2027, 'new');
    expect(copy?.round.skipped.map((each) => each.propertyId)).toEqual([b.id, c.id]);
    expect(copy?.notes).toContain('2 of the lawns that were left out are not left out again');
  });

  test('is not made without treatments or rigs', () => {
    expect(copiedToYear({ ...sample, treatments: [] }, old, 2027, 'new')).toBeNull();
    expect(copiedToYear({ ...sample, rigs: [] }, old, 2027, 'new')).toBeNull();
  });
});
