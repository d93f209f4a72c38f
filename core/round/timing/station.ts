import type { Book, TemperatureYear } from '../../book/index.ts';
import { dayNumber } from '../../units/index.ts';
import type { SeriesName } from './types.ts';

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
  const series = { max: new Map<number, number>(), min: new Map<number, number>(), soil: new Map<number, number>() };
  for (const year of years) gather(year, series);
  return {
    name: first.station,
    source: [...new Set(years.map((each) => each.source).filter((each) => each !== ''))].join('; '),
    soilDepthIn: years.find((each) => each.soilDepthIn !== undefined)?.soilDepthIn ?? null,
    series,
  };
}

/** Numbers of the days of a record. Records never change, so they are kept as long as it lives. */
const numbersOf = new WeakMap<TemperatureYear, Int32Array>();

function dayNumbers(year: TemperatureYear): Int32Array {
  const before = numbersOf.get(year);
  if (before !== undefined) return before;
  const numbers = Int32Array.from(year.days, (day) => dayNumber(day[0]));
  numbersOf.set(year, numbers);
  return numbers;
}

function gather(year: TemperatureYear, series: Readonly<Record<SeriesName, Map<number, number>>>): void {
  const numbers = dayNumbers(year);
  for (const [index, [, max, min, soil]] of year.days.entries()) {
    const day = numbers[index] ?? 0;
    if (max !== null) series.max.set(day, max);
    if (min !== null) series.min.set(day, min);
    if (soil !== null) series.soil.set(day, soil);
  }
}
