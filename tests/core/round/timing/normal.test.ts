import { expect, test } from 'vitest';
import { dailySeries, normalCurve } from '../../../../core/round/timing/index.ts';
import { addDays, dayNumber } from '../../../../core/units/index.ts';
import { swing } from './stations.ts';

function readings(from: string, to: string, rule: (date: string) => number | null): ReadonlyMap<number, number> {
  const all = new Map<number, number>();
  for (let date = from; date <= to; date = addDays(date, 1)) {
    const value = rule(date);
    if (value !== null) all.set(dayNumber(date), value);
  }
  return all;
}

test('the curve is the mean of the years', () => {
  const all = readings('2025-01-01', '2026-12-31', (date) => (date < '2026' ? 40 : 50));
  const curve = normalCurve(all, 2027, 7);
  expect(curve.years).toEqual([2025, 2026]);
  expect(curve.at(dayNumber('2027-03-01'))).toBeCloseTo(45, 12);
  // The year itself, and later ones, do not count.
  expect(normalCurve(all, 2026, 7).at(dayNumber('2027-03-01'))).toBeCloseTo(40, 12);
});

test('smoothing over seven days on each side makes a sine flatter by sin(15 x) / (15 sin x), x = pi / 365', () => {
  // The mean of 2 n + 1 points of a sine of step t is the sine times sin((2 n + 1) t / 2) / ((2 n + 1) sin(t / 2)).
  const rule = swing(50, 25);
  const curve = normalCurve(readings('2026-01-01', '2026-12-31', rule), 2027, 7);
  const x = Math.PI / 365;
  const flatter = Math.sin(15 * x) / (15 * Math.sin(x));
  for (const date of ['2027-01-02', '2027-04-20', '2027-07-20', '2027-12-31']) {
    expect(curve.at(dayNumber(date))).toBeCloseTo(50 + (rule(date) - 50) * flatter, 9);
  }
  // No day on each side: the figures as they were measured.
  expect(normalCurve(readings('2026-01-01', '2026-12-31', rule), 2027, 0).at(dayNumber('2027-07-20'))).toBeCloseTo(
    rule('2026-07-20'),
    12,
  );
});

test('a measured 29 February counts with the 28th; the normal 29th lies between the 28th and 1 March', () => {
  const byDay: Readonly<Record<string, number>> = { '02-28': 40, '02-29': 44, '03-01': 50 };
  const all = readings('2024-01-01', '2024-12-31', (date) => byDay[date.slice(5)] ?? 30);
  const curve = normalCurve(all, 2028, 0);
  expect(curve.at(dayNumber('2028-02-28'))).toBe(42);
  expect(curve.at(dayNumber('2028-02-29'))).toBe(46);
  expect(curve.at(dayNumber('2028-03-01'))).toBe(50);
  expect(curve.at(dayNumber('2027-03-01'))).toBe(50);
});

test('a day has a normal figure where more than half of the days around it were measured', () => {
  const curve = normalCurve(
    readings('2026-03-01', '2026-05-31', () => 50),
    2027,
    7,
  );
  // From 22 February on seven of fifteen days were measured; on 1 March eight are.
  expect(curve.at(dayNumber('2027-03-01'))).toBe(50);
  expect(curve.at(dayNumber('2027-02-28'))).toBeNull();
  expect(curve.at(dayNumber('2027-06-15'))).toBeNull();
});

test('a gap at the end is no gap: nothing is bridged to a day that was never measured', () => {
  const curve = normalCurve(new Map(), 2027, 7);
  const all = readings('2027-03-01', '2027-03-10', (date) => (date === '2027-03-05' ? null : 50));
  const { figures, lastMeasured } = dailySeries(all, curve, 3, dayNumber('2027-02-27'), 16);
  expect(figures.map((each) => each.basis[0]).join('')).toBe(`nn${'mmmm'}i${'mmmmm'}nnnn`);
  expect(lastMeasured).toBe(dayNumber('2027-03-10'));
});
