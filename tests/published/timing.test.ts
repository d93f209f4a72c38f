import { expect, test } from 'vitest';
import { degreeDays, timingSeason } from '../../core/round/timing/index.ts';
import { bookWith, countTiming, soilTiming } from '../core/round/timing/stations.ts';

test('75 F and 27 F above a base of 50 F are 1 degree day (Virginia Tech text via Kent County Extension, 2008)', () => {
  expect(degreeDays(75, 27, 50)).toBe(1);
});

test('the window of 250 to 500 degree days, base 32 F, from 15 February (Michigan State, K. Frank, 2020-2024)', () => {
  // (52 + 32) / 2 - 32 = 10 a day: 250 on the 25th day, 11 March; 350 on the 35th, 21 March; 500 on the 50th, 5 April.
  const timing = countTiming({ baseF: 32, from: '02-15', opensAt: 250, bestAt: 350, closesAt: 500 });
  const book = bookWith('2027-01-01', '2027-12-31', () => [52, 32, null]);
  const { state } = timingSeason(book, timing, '2027-03-15').at(0);
  expect(state).toMatchObject({
    opens: { on: '2027-03-11' },
    best: { on: '2027-03-21' },
    end: { date: { on: '2027-04-04' } },
  });
});

test('three days in a row above 50 F (Kent County Extension, 2009): two of them and a cold one do not count', () => {
  const warm = new Set(['2027-03-05', '2027-03-06', '2027-03-20', '2027-03-21', '2027-03-22']);
  const book = bookWith('2027-02-01', '2027-06-30', (date) => [
    null,
    null,
    warm.has(date) || date > '2027-04' ? 52 : 45,
  ]);
  const { state } = timingSeason(book, soilTiming({ forDays: 3, closesAtF: 50 }), '2027-03-01').at(0);
  expect(state).toMatchObject({ end: { date: { on: '2027-03-21' } } });
});

test('soil falling below 56 F closes the seeding window; 56 F itself does not (common practice, no source)', () => {
  // 80 F on 1 August, half a degree less each day: 75 on 11 August, 56 on 18 September, below it on the 19th.
  const first = Date.UTC(2027, 7, 1);
  const book = bookWith('2027-07-01', '2027-12-31', (date) => [
    null,
    null,
    80 - (Date.parse(`${date}T00:00:00Z`) - first) / 86_400_000 / 2,
  ]);
  const timing = soilTiming({ course: 'falling', from: '08-01', opensAtF: 75, closesAtF: 56 });
  const { state } = timingSeason(book, timing, '2027-08-20').at(0);
  expect(state).toMatchObject({
    opens: { on: '2027-08-11' },
    end: { kind: 'day', date: { on: '2027-09-18', basis: 'measured' } },
  });
});
