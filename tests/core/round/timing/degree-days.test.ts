import { expect, test } from 'vitest';
import { degreeDays, timingSeason } from '../../../../core/round/timing/index.ts';
import { addDays } from '../../../../core/units/index.ts';
import { bookWith, countTiming } from './stations.ts';

test('a day below the base counts nothing, and takes nothing away', () => {
  expect(degreeDays(50, 30, 50)).toBe(0);
  // (50 + 30) / 2 - 32 = 8: the same day above the base of Michigan State (K. Frank, 2020-2024).
  expect(degreeDays(50, 30, 32)).toBe(8);
});

test('a count of five a day is at 100 on the twentieth day and at 200 on the fortieth', () => {
  // (60 + 50) / 2 - 50 = 5 a day from 1 March; 100 on 20 March; 200 on the 40th day, 9 April; the last useful day is the one before.
  const book = bookWith('2027-01-01', '2027-12-31', () => [60, 50, null]);
  const { state, starts, line } = timingSeason(book, countTiming(), '2027-03-15').at(0);
  expect(starts).toBe('2027-03-01');
  expect(state).toEqual({
    kind: 'window',
    opens: { on: '2027-03-20', basis: 'measured' },
    best: null,
    end: { kind: 'day', date: { on: '2027-04-08', basis: 'measured' } },
  });
  expect(line[19]?.value).toBe(100);
});

test('a count that grows by one more each day is at n (n + 1) / 2', () => {
  // 19 * 20 / 2 = 190, 20 * 21 / 2 = 210: 200 is passed on the twentieth day.
  const first = Date.UTC(2027, 2, 1);
  const book = bookWith('2027-03-01', '2027-12-31', (date) => {
    const n = (Date.parse(`${date}T00:00:00Z`) - first) / 86_400_000 + 1;
    return [50 + n, 50 + n, null];
  });
  const { state } = timingSeason(book, countTiming({ opensAt: 0, closesAt: 200 }), '2027-03-15').at(0);
  expect(state).toMatchObject({ opens: { on: '2027-03-01' }, end: { date: { on: '2027-03-19' } } });
});

test('a warmer site counts its offset every day', () => {
  // Five a day at the station, ten where 5 F are added: 100 on the tenth day, 10 March, 200 on the twentieth.
  const book = bookWith('2027-01-01', '2028-03-31', () => [60, 50, null]);
  const season = timingSeason(book, countTiming(), '2027-03-15');
  expect(season.at(5).state).toMatchObject({ opens: { on: '2027-03-10' }, end: { date: { on: '2027-03-19' } } });
  // And none where 5 F are taken away: the day is at the base.
  expect(season.at(-5).state).toEqual({ kind: 'not-this-year', why: 'never-reached' });
});

test('a leap day is a day of the count', () => {
  // Ten a day from 20 February: 100 on the tenth day, which is 29 February in 2028 and 1 March in 2027.
  const book = bookWith('2027-01-01', '2028-12-31', () => [60, 60, null]);
  const timing = countTiming({ from: '02-20', opensAt: 100, closesAt: 1000 });
  expect(timingSeason(book, timing, '2028-03-01').at(0).state).toMatchObject({ opens: { on: '2028-02-29' } });
  expect(timingSeason(book, timing, '2027-03-01').at(0).state).toMatchObject({ opens: { on: '2027-03-01' } });
});

test('a day without a figure and without earlier years ends the count: nothing later is known', () => {
  const book = bookWith('2027-03-01', '2027-03-10', () => [60, 50, null]);
  const { state, footing } = timingSeason(book, countTiming(), '2027-03-05').at(0);
  expect(state).toEqual({ kind: 'unknown', firstWithout: '2027-03-11' });
  expect(footing).toMatchObject({ lastMeasured: '2027-03-10', curveYears: [] });
  // Opened before that day, the end is what is not known.
  const soon = timingSeason(book, countTiming({ opensAt: 25 }), '2027-03-05').at(0);
  expect(soon.state).toMatchObject({
    opens: { on: '2027-03-05', basis: 'measured' },
    end: { kind: 'unknown', firstWithout: '2027-03-11' },
  });
});

test('the days ahead are those of earlier years, and said to be expected', () => {
  // 2026 had ten a day, 2027 has five a day until 10 March: 50, then ten a day: 100 on 15 March, 200 on 25 March.
  const book = bookWith('2026-01-01', '2027-03-10', (date) => (date < '2027' ? [60, 60, null] : [60, 50, null]));
  const { state, footing } = timingSeason(book, countTiming(), '2027-03-10').at(0);
  expect(state).toEqual({
    kind: 'window',
    opens: { on: '2027-03-15', basis: 'expected' },
    best: null,
    end: { kind: 'day', date: { on: '2027-03-24', basis: 'expected' } },
  });
  // The curve is not shifted: measured days were 60 and 50 where the curve has 60 and 60, so 5 F below in the mean.
  expect(footing).toMatchObject({ curveYears: [2026], lastMeasured: '2027-03-10', aboveCurveF: -5 });
});

test('missing days inside are bridged where the gap is short, of the curve where it is long, and listed', () => {
  const gone = new Set([
    '2027-03-03',
    '2027-03-04',
    '2027-03-05',
    '2027-03-10',
    '2027-03-11',
    '2027-03-12',
    '2027-03-13',
  ]);
  const book = bookWith('2026-01-01', '2027-04-30', (date) => {
    if (gone.has(date)) return null;
    if (date < '2027') return [70, 70, null];
    return date < '2027-03-05' ? [52, 52, null] : [60, 60, null];
  });
  const { line, footing, state } = timingSeason(book, countTiming({ opensAt: 120, closesAt: 500 }), '2027-03-15').at(0);
  expect(footing?.interpolated).toEqual(['2027-03-03', '2027-03-04', '2027-03-05']);
  expect(footing?.fromCurve).toEqual(['2027-03-10', '2027-03-11', '2027-03-12', '2027-03-13']);
  // 2, 2, then the line from 52 on 2 March to 60 on 6 March: 54, 56, 58, then 60: 2, 2, 4, 6, 8, 10 are 32 on 6 March.
  expect(line[5]?.value).toBeCloseTo(32, 9);
  // 10 on each of 7, 8, 9 March: 62; four days of the curve, 20 each: 142 on 13 March, above 120 on the 12th.
  expect(line[12]?.value).toBeCloseTo(142, 9);
  expect(state).toMatchObject({ opens: { on: '2027-03-12', basis: 'mixed' } });
  expect(addDays('2027-03-01', 11)).toBe('2027-03-12');
});
