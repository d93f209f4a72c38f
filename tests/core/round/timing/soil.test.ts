import { expect, test } from 'vitest';
import { timingSeason } from '../../../../core/round/timing/index.ts';
import { bookWith, soilTiming, swing } from './stations.ts';

/** Soil of 50 F in the mean that swings by 25 F, upwards through 50 F on 20 April. */
const soil = swing(50, 25);
const year = bookWith('2026-11-01', '2028-03-01', (date) => [null, null, soil(date)]);

test('rising soil reaches a threshold on the day that the sine does', () => {
  // 62.5 = 50 + 25 / 2: the sine is at 1/2 a twelfth of 365 days after 20 April, 30.4 days: reached on the 31st, 21 May.
  // 55: the arc sine of 1/5 is 0.20136, or 11.7 of 365 days: reached on the 12th, 2 May.
  const { state } = timingSeason(year, soilTiming({ opensAtF: 55, closesAtF: 62.5 }), '2027-04-01').at(0);
  expect(state).toEqual({
    kind: 'window',
    opens: { on: '2027-05-02', basis: 'measured' },
    best: null,
    end: { kind: 'day', date: { on: '2027-05-20', basis: 'measured' } },
  });
});

test('a southern site is earlier by what its offset moves the crossing, a shaded one later', () => {
  const season = timingSeason(year, soilTiming({ closesAtF: 62.5 }), '2027-04-01');
  // 57.5 at the station with 5 F added: the arc sine of 0.3 is 0.30469, or 17.7 days: 8 May closes, 7 May is the last.
  expect(season.at(5).state).toMatchObject({ end: { date: { on: '2027-05-07' } } });
  // 67.5 with 5 F taken away: the arc sine of 0.7 is 0.77540, or 45.04 days: the 46th day is 5 June.
  expect(season.at(-5).state).toMatchObject({ end: { date: { on: '2027-06-04' } } });
});

test('without an opening the window is open from the first day', () => {
  const { state } = timingSeason(year, soilTiming(), '2027-04-01').at(0);
  expect(state).toMatchObject({ opens: { on: '2027-02-01', basis: 'calendar' } });
});

test('a mean of days lags behind: of a straight rise it is the figure of the middle day', () => {
  // One degree a day from 40 F on 1 March; the mean of five days is that of two days before: 50 F not on 11 but on 13 March.
  const first = Date.UTC(2027, 2, 1);
  const book = bookWith('2027-02-01', '2027-06-30', (date) => [
    null,
    null,
    40 + (Date.parse(`${date}T00:00:00Z`) - first) / 86_400_000,
  ]);
  const at = (meanOfDays: number, forDays: number) =>
    timingSeason(
      book,
      soilTiming({ from: '03-01', meanOfDays, forDays, opensAtF: 50, closesAtF: 90 }),
      '2027-03-10',
    ).at(0).state;
  expect(at(1, 1)).toMatchObject({ opens: { on: '2027-03-11' } });
  expect(at(5, 1)).toMatchObject({ opens: { on: '2027-03-13' } });
  // Held for three days it counts on the third of them.
  expect(at(1, 3)).toMatchObject({ opens: { on: '2027-03-13' } });
});

test('a threshold that the year never reaches: not this year; a closing that it never reaches: until further notice', () => {
  const never = timingSeason(year, soilTiming({ opensAtF: 76, closesAtF: 80 }), '2027-04-01').at(0);
  expect(never.state).toEqual({ kind: 'not-this-year', why: 'never-reached' });
  const open = timingSeason(year, soilTiming({ opensAtF: 70, closesAtF: 76 }), '2027-04-01').at(0);
  expect(open.state).toMatchObject({ kind: 'window', end: { kind: 'open' } });
});

test('opening and closing in one jump leave no day', () => {
  const book = bookWith('2027-01-01', '2027-12-31', (date) => [null, null, date < '2027-04-10' ? 40 : 70]);
  const { state } = timingSeason(book, soilTiming({ opensAtF: 50, closesAtF: 60 }), '2027-04-01').at(0);
  expect(state).toEqual({ kind: 'not-this-year', why: 'passed-at-once' });
});

test('a season from October runs over the turn of the year', () => {
  const timing = soilTiming({ course: 'falling', from: '10-01', opensAtF: 45, closesAtF: 30 });
  const book = bookWith('2025-01-01', '2027-12-31', (date) => [null, null, soil(date)]);
  // 45 on the way down: 365/2 + 11.7 days after 20 April; 194.2: the 195th day, 1 November. 30: the arc sine of 4/5 is 0.92730, or
  // 53.9 days more than half a year: 236.4: the 237th day closes, 13 December; the last is the 12th.
  for (const reference of ['2026-11-15', '2027-02-10']) {
    const season = timingSeason(book, timing, reference);
    expect(season.starts).toBe('2026-10-01');
    expect(season.at(0).state).toMatchObject({ opens: { on: '2026-11-01' }, end: { date: { on: '2026-12-12' } } });
  }
});

test('without temperatures nothing is known', () => {
  const book = bookWith('2027-01-01', '2027-01-01', () => [null, null, null]);
  expect(timingSeason({ temperatures: [] }, soilTiming(), '2027-03-01').at(0).state).toEqual({
    kind: 'unknown',
    firstWithout: null,
  });
  expect(timingSeason(book, soilTiming({ opensAtF: 50 }), '2027-03-01').at(0).state).toEqual({
    kind: 'unknown',
    firstWithout: '2027-02-01',
  });
  expect(timingSeason(book, soilTiming({ station: 'Elsewhere' }), '2027-03-01').at(0).state.kind).toBe('unknown');
});
