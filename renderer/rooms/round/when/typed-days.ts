import type { TemperatureYear } from '../../../../core/book/index.ts';

type Day = TemperatureYear['days'][number];

/**
 * The record of a station's year with one day as it was typed, in its place among the others; a day without any figure is taken out.
 *
 * @param freshId an id for a year that the station does not have yet
 */
export function withTypedDay(
  records: readonly TemperatureYear[],
  station: string,
  day: Day,
  freshId: string,
): TemperatureYear {
  const [date, ...figures] = day;
  const before = records.find(
    (each) => each.station === station && each.days[0]?.[0].startsWith(date.slice(0, 5)) === true,
  );
  const others = (before?.days ?? []).filter((each) => each[0] !== date);
  const days = figures.every((each) => each === null) ? others : [...others, day];
  const about = before ?? { id: freshId, station, source: 'typed' };
  return { ...about, days: days.toSorted((left, right) => (left[0] < right[0] ? -1 : 1)) };
}

/** The figures of a day at a station; nulls where nothing was read. */
export function dayAt(records: readonly TemperatureYear[], station: string, date: string): Day {
  for (const record of records) {
    const found = record.station === station ? record.days.find((each) => each[0] === date) : undefined;
    if (found !== undefined) return found;
  }
  return [date, null, null, null];
}
