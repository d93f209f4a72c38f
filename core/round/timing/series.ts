import type { NormalCurve } from './normal.ts';
import type { Basis, DailySeries, DayFigure } from './types.ts';

/**
 * A figure for every day of a span. A measured day keeps its own. A gap of at most `gapDays` between two measured days is bridged by a
 * straight line; a longer one, and every day after the last measured one, has the figure of the normal curve just as it is: the curve
 * is not shifted to meet the measured days.
 *
 * @param first number of the first day
 * @param count days in the span
 */
export function dailySeries(
  readings: ReadonlyMap<number, number>,
  curve: NormalCurve,
  gapDays: number,
  first: number,
  count: number,
): DailySeries {
  const figures: DayFigure[] = [];
  let lastMeasured: number | null = null;
  for (let day = first; day < first + count; day += 1) {
    const measured = readings.get(day);
    if (measured !== undefined) {
      figures.push({ value: measured, basis: 'measured' });
      lastMeasured = day;
      continue;
    }
    figures.push(bridged(readings, gapDays, day) ?? normal(curve, day));
  }
  return { first, figures, lastMeasured };
}

function normal(curve: NormalCurve, day: number): DayFigure {
  const value = curve.at(day);
  return value === null ? { value, basis: 'none' } : { value, basis: 'curve' };
}

function bridged(readings: ReadonlyMap<number, number>, gapDays: number, day: number): DayFigure | null {
  const before = nearest(readings, day, -1, gapDays);
  const after = nearest(readings, day, 1, gapDays);
  if (before === null || after === null || after - before - 1 > gapDays) return null;
  const from = readings.get(before) ?? 0;
  const to = readings.get(after) ?? 0;
  return { value: from + ((to - from) * (day - before)) / (after - before), basis: 'interpolated' };
}

/** The nearest measured day in one direction, as far as a gap may reach. */
function nearest(readings: ReadonlyMap<number, number>, day: number, step: 1 | -1, most: number): number | null {
  for (let distance = 1; distance <= most; distance += 1) {
    if (readings.has(day + step * distance)) return day + step * distance;
  }
  return null;
}

const WORST_FIRST: readonly Basis[] = ['none', 'curve', 'interpolated', 'measured'];

/** The less certain of several origins. */
export function worst(all: readonly Basis[]): Basis {
  return WORST_FIRST.find((each) => all.includes(each)) ?? 'none';
}
