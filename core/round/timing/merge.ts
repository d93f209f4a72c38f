import type { TemperatureYear } from '../../book/index.ts';
import { addDays, daysBetween } from '../../units/index.ts';

type Day = TemperatureYear['days'][number];

/** Days in a row, both ends included. */
export type DayRange = { readonly from: string; readonly to: string; readonly days: number };

/** One year of a station with new days put into it. */
export type MergedYear = {
  readonly record: TemperatureYear;
  readonly year: number;
  readonly isNew: boolean;
  /** Days that the station did not have, that get other figures, and that stay as they were. */
  readonly added: number;
  readonly changed: number;
  readonly same: number;
  /** Days between the first and the last of the year that are not there. */
  readonly missing: readonly DayRange[];
};

/**
 * Puts days into the records of a station, one record for each year. A figure replaces the one that was there; where a day has no new
 * figure the old one stays. What is written of the station beside the days replaces what was there, where it is given.
 *
 * @param freshId an id that no record has, for a year
 */
export function mergeTemperatures(
  records: readonly TemperatureYear[],
  station: string,
  days: readonly Day[],
  about: { readonly source?: string; readonly soilDepthIn?: number | null },
  freshId: (year: number) => string,
): readonly MergedYear[] {
  const byYear = new Map<number, Day[]>();
  for (const day of days) {
    const year = Number(day[0].slice(0, 4));
    const list = byYear.get(year);
    if (list === undefined) byYear.set(year, [day]);
    else list.push(day);
  }
  return [...byYear]
    .toSorted(([left], [right]) => left - right)
    .map(([year, fresh]) => {
      const before = records.find(
        (each) => each.station === station && each.days[0]?.[0].startsWith(`${year}-`) === true,
      );
      return merged(
        before ?? { id: freshId(year), station, source: '', days: [] },
        fresh,
        year,
        before === undefined,
        about,
      );
    });
}

function merged(
  before: TemperatureYear,
  fresh: readonly Day[],
  year: number,
  isNew: boolean,
  about: { readonly source?: string; readonly soilDepthIn?: number | null },
): MergedYear {
  const all = new Map(before.days.map((day) => [day[0], day]));
  let [added, changed, same] = [0, 0, 0];
  for (const day of fresh) {
    const old = all.get(day[0]);
    const next: Day = old === undefined ? day : [day[0], day[1] ?? old[1], day[2] ?? old[2], day[3] ?? old[3]];
    if (old === undefined) added += 1;
    else if (next.every((figure, place) => figure === old[place])) same += 1;
    else changed += 1;
    all.set(day[0], next);
  }
  const days = [...all.values()].toSorted((left, right) => (left[0] < right[0] ? -1 : 1));
  const record: TemperatureYear = {
    ...before,
    days,
    ...(about.source === undefined ? {} : { source: about.source }),
    ...(about.soilDepthIn == null ? {} : { soilDepthIn: about.soilDepthIn }),
  };
  return { record, year, isNew, added, changed, same, missing: missingDays(days.map((day) => day[0])) };
}

/** The days that are left out between dates in order. */
export function missingDays(dates: readonly string[]): readonly DayRange[] {
  return dates.flatMap((date, index) => {
    const before = dates[index - 1];
    const gap = before === undefined ? 0 : daysBetween(before, date) - 1;
    if (before === undefined || gap < 1) return [];
    return [{ from: addDays(before, 1), to: addDays(date, -1), days: gap }];
  });
}

/** Days in a row out of dates in order. */
export function rangesOf(dates: readonly string[]): readonly DayRange[] {
  const ranges: DayRange[] = [];
  for (const date of dates) {
    const last = ranges.at(-1);
    if (last !== undefined && addDays(last.to, 1) === date)
      ranges[ranges.length - 1] = { ...last, to: date, days: last.days + 1 };
    else ranges.push({ from: date, to: date, days: 1 });
  }
  return ranges;
}
