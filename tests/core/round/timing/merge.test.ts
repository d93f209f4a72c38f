import { expect, test } from 'vitest';
import type { TemperatureYear } from '../../../../core/book/index.ts';
import { mergeTemperatures, missingDays, rangesOf } from '../../../../core/round/timing/index.ts';

const idOf = (year: number) => `yard-${year}`;

test('several years of a file become one record for each year', () => {
  const merged = mergeTemperatures(
    [],
    'Yard',
    [
      ['2027-01-01', 40, 30, null],
      ['2026-12-30', 42, 31, null],
      ['2026-12-31', 41, 30, null],
    ],
    { source: 'days.csv', soilDepthIn: 2 },
    idOf,
  );
  expect(merged.map(({ record, ...rest }) => ({ ...rest, id: record.id, days: record.days.length }))).toEqual([
    { id: 'yard-2026', year: 2026, isNew: true, added: 2, changed: 0, same: 0, missing: [], days: 2 },
    { id: 'yard-2027', year: 2027, isNew: true, added: 1, changed: 0, same: 0, missing: [], days: 1 },
  ]);
  expect(merged[0]?.record).toMatchObject({ station: 'Yard', source: 'days.csv', soilDepthIn: 2 });
});

test('new figures replace old ones, old ones stay where there is none, other stations are left alone', () => {
  const before: readonly TemperatureYear[] = [
    { id: 'a', station: 'Hill', source: '', days: [['2027-03-01', 1, 1, 1]] },
    {
      id: 'b',
      station: 'Yard',
      source: 'old.csv',
      days: [
        ['2027-03-01', 60, 40, 45],
        ['2027-03-02', 61, 41, null],
        ['2027-03-03', 62, 42, 46],
      ],
    },
  ];
  const [only, ...others] = mergeTemperatures(
    before,
    'Yard',
    [
      ['2027-03-01', 60, 40, null],
      ['2027-03-02', 61, 41, 44],
      ['2027-03-06', 65, 45, 47],
    ],
    {},
    idOf,
  );
  expect(others).toEqual([]);
  expect(only).toMatchObject({ isNew: false, added: 1, changed: 1, same: 1 });
  expect(only?.record).toEqual({
    id: 'b',
    station: 'Yard',
    source: 'old.csv',
    days: [
      ['2027-03-01', 60, 40, 45],
      ['2027-03-02', 61, 41, 44],
      ['2027-03-03', 62, 42, 46],
      ['2027-03-06', 65, 45, 47],
    ],
  });
  expect(only?.missing).toEqual([{ from: '2027-03-04', to: '2027-03-05', days: 2 }]);
});

test('missing days are counted over a leap day', () => {
  expect(missingDays(['2028-02-27', '2028-03-02'])).toEqual([{ from: '2028-02-28', to: '2028-03-01', days: 3 }]);
  expect(missingDays(['2027-02-27', '2027-03-02'])).toEqual([{ from: '2027-02-28', to: '2027-03-01', days: 2 }]);
});

test('days in a row are told as one span', () => {
  expect(rangesOf(['2027-03-01', '2027-03-02', '2027-03-05'])).toEqual([
    { from: '2027-03-01', to: '2027-03-02', days: 2 },
    { from: '2027-03-05', to: '2027-03-05', days: 1 },
  ]);
});
