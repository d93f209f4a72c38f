import { describe, expect, test } from 'vitest';
import { timingSeason } from '../../../../core/round/timing/index.ts';
import { layoutChart, nextDate } from '../../../../renderer/rooms/round/when/chart-layout.ts';
import { bookWith, countTiming, soilTiming } from '../../../core/round/timing/stations.ts';

const same = (figure: number) => figure;

/** Five degree days each day, measured up to 10 March, then of the year before. */
const book = bookWith('2026-01-01', '2027-03-10', () => [60, 50, null]);
const result = timingSeason(book, countTiming(), '2027-03-15').at(0);

describe('the picture of a season', () => {
  const layout = layoutChart(result, ['2027-03-20'], 900, 300, same);

  test('begins with the season and shows three weeks after the last date that matters', () => {
    expect(layout.first).toBe('2027-03-01');
    // The last useful day is 8 April, the 39th; 21 more are 60, and 75 is the least.
    expect(layout.days).toBe(75);
    expect(layoutChart(result, ['2027-08-01'], 900, 300, same).days).toBe(154 + 21);
    // A date of another season does not stretch it.
    expect(layoutChart(result, ['2029-08-01', '2020-01-01'], 900, 300, same).days).toBe(75);
  });

  test('a place across leads back to its day', () => {
    for (const date of ['2027-03-01', '2027-03-31', '2027-05-14']) expect(layout.toDate(layout.toX(date))).toBe(date);
  });

  test('the window lies between its dates, and thresholds at their heights', () => {
    expect(layout.window).toEqual({ from: layout.toX('2027-03-20'), to: layout.toX('2027-04-08') });
    expect(layout.thresholds.map((each) => [each.name, each.value])).toEqual([
      ['opens', 100],
      ['closes', 200],
    ]);
    const [opens, closes] = layout.thresholds;
    expect(opens!.y).toBeGreaterThan(closes!.y);
    // On 20 March the count is 100: the line is at the threshold.
    expect(layout.yOf(result.line[19])).toBeCloseTo(opens!.y, 9);
  });

  test('what was measured and what is expected are two lines that meet', () => {
    const end = layout.measured.split('L').at(-1);
    expect(layout.expected.startsWith(`M${end}`)).toBe(true);
    expect(layout.measured.match(/[ML]/g)?.length).toBe(10);
  });

  test('a count that runs out of the picture is not drawn there', () => {
    expect(layout.yOf({ value: 10_000, basis: 'curve' })).toBeNull();
    expect(layout.yOf({ value: null, basis: 'none' })).toBeNull();
    expect(layout.yOf(undefined)).toBeNull();
  });

  test('the axis is in the unit that is shown', () => {
    const celsius = layoutChart(result, [], 900, 300, (figure) => figure / 1.8);
    // 200 F days are 111 C days: every 20 or 50 of them, not 36 or 90.
    expect(celsius.levels.map((each) => each.label)).toEqual(['0', '20', '40', '60', '80', '100', '120', '140']);
  });

  test('without a line there are months and the window only', () => {
    const calendar = timingSeason(
      { temperatures: [] },
      { id: 'c', name: 'c', source: '', kind: 'calendar', opens: '03-10', closes: '04-15' },
      '2027-03-15',
    ).at(0);
    const bare = layoutChart(calendar, [], 900, 130, same);
    expect(bare.measured + bare.expected).toBe('');
    expect(bare.thresholds).toEqual([]);
    expect(bare.months.map((each) => each.label)).toEqual(['Apr', 'May']);
    expect(bare.window?.to).toBe(bare.toX('2027-04-15'));
  });

  test('open until further notice reaches the right edge; not known is no window', () => {
    const soil = bookWith('2026-01-01', '2027-12-31', () => [null, null, 55]);
    const open = timingSeason(soil, soilTiming({ opensAtF: 50, closesAtF: 60 }), '2027-03-15').at(0);
    expect(open.state).toMatchObject({ end: { kind: 'open' } });
    const drawn = layoutChart(open, [], 900, 300, same);
    expect(drawn.window?.to).toBe(drawn.right);
    const short = bookWith('2027-01-01', '2027-02-20', () => [null, null, 55]);
    const unknown = timingSeason(short, soilTiming({ opensAtF: 50, closesAtF: 60 }), '2027-03-15').at(0);
    expect(layoutChart(unknown, [], 900, 300, same).window).toBeNull();
  });
});

test.each([
  ['ArrowRight', '2027-03-02'],
  ['ArrowLeft', '2027-03-01'],
  ['PageUp', '2027-03-08'],
  ['PageDown', '2027-03-01'],
  ['End', '2027-05-01'],
  ['Home', '2027-03-01'],
  ['Escape', null],
  ['a', undefined],
])('%s leads from the first day to %s', (key, expected) =>
  expect(nextDate(key, '2027-03-01', '2027-03-01', '2027-05-01')).toBe(expected),
);
