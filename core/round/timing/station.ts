import type { Book, TemperatureYear } from '../../book/index.ts';
import { dayNumber } from '../../units/index.ts';
import { SERIES, type SeriesName } from './types.ts';

/** What one station measured in all of its years: day numbers with figures in F. */
export type Station = {
  readonly name: string;
  readonly source: string;
  readonly soilDepthIn: number | null;
  readonly series: Readonly<Record<SeriesName, ReadonlyMap<number, number>>>;
};

/** The stations of a book, in its order. */
export function stationNames({ temperatures }: Pick<Book, 'temperatures'>): readonly string[] {
  return [...new Set(temperatures.map((each) => each.station))];
}

/** A station by its name, the first one where none is named; null where the book has none of that name. */
export function stationOf(book: Pick<Book, 'temperatures'>, name: string | undefined): Station | null {
  const wanted = name ?? book.temperatures[0]?.station;
  const years = book.temperatures.filter((each) => each.station === wanted);
  const [first] = years;
  if (first === undefined) return null;
  return {
    name: first.station,
    source: [...new Set(years.map((each) => each.source).filter((each) => each !== ''))].join('; '),
    soilDepthIn: years.find((each) => each.soilDepthIn !== undefined)?.soilDepthIn ?? null,
    series: { max: readings(years, 'max'), min: readings(years, 'min'), soil: readings(years, 'soil') },
  };
}

function readings(years: readonly TemperatureYear[], name: SeriesName): ReadonlyMap<number, number> {
  const place = SERIES.indexOf(name);
  const all = new Map<number, number>();
  for (const { days } of years) {
    for (const [date, ...figures] of days) {
      const value = figures[place] ?? null;
      if (value !== null) all.set(dayNumber(date), value);
    }
  }
  return all;
}
