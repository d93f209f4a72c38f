import { type DateGuess, guessDateOrder } from './dates.ts';
import { guessUnit, readFigure, type UnitGuess } from './degree-figures.ts';
import { findColumn, plain, type Table } from './table.ts';

/** What the columns of a table of temperatures are for; -1 where there is none. */
export type TemperatureColumns = {
  readonly date: number;
  readonly max: number;
  readonly min: number;
  readonly soil: number;
  /** The station, where a file holds several. */
  readonly station: number;
};

/** What can be seen in a table of temperatures before anything is asked. */
export type TemperatureGuess = {
  readonly dates: DateGuess;
  readonly air: UnitGuess;
  readonly soil: UnitGuess;
  /** Names in the column of stations, in the order of the file. */
  readonly stations: readonly string[];
};

const DATES = ['date', 'day', 'dates', 'datetime', 'obsdate', 'observationdate', 'readingdate', 'time', 'timestamp'];
const STATIONS = ['station', 'stationname', 'name', 'stationid', 'site', 'location'];
/** Words of columns that are no temperature of the air. */
const OTHER = /soil|humid|rh|wind|gust|dew|rain|prec|press|radiat|solar|snow|evap|wet/;

/** Looks for the columns by their names. */
export function guessTemperatureColumns(names: readonly string[]): TemperatureColumns {
  const words = names.map(plain);
  const air = (expression: RegExp) => words.findIndex((word) => expression.test(word) && !OTHER.test(word));
  const soils = words.flatMap((word, column) => (/soil|^(?:st|ts)\d/.test(word) ? [column] : []));
  const mean = soils.find((column) => /mean|avg|average/.test(words[column] ?? ''));
  const plainSoil = soils.find(
    (column) => !/max|min|high|low|moist|type|class|kind|test|ph$/.test(words[column] ?? ''),
  );
  return {
    date: findColumn(names, DATES),
    max: air(/max|high|^hi(?:temp)?$/),
    min: air(/min|low|^lo(?:temp)?$/),
    soil: mean ?? plainSoil ?? -1,
    station: findColumn(names, STATIONS),
  };
}

/** Columns that lists of lawns have and tables of stations have not. */
const OF_LAWNS = /^(?:address|street|zip|owner|customer)|area|acres|sqft|sqfeet|wkt|geom/;

/** True for a table with a date, and with the highest and lowest temperature or one of the soil, and that is no list of lawns. */
export function looksLikeTemperatures(names: readonly string[]): boolean {
  if (names.map(plain).some((word) => OF_LAWNS.test(word))) return false;
  const { date, max, min, soil } = guessTemperatureColumns(names);
  return date >= 0 && ((max >= 0 && min >= 0) || soil >= 0);
}

/** What the cells of the chosen columns say about dates, units and stations. */
export function guessTemperatures({ columns: names, rows }: Table, columns: TemperatureColumns): TemperatureGuess {
  const cells = (column: number) => (column < 0 ? [] : rows.map((row) => row.cells[column] ?? ''));
  const figures = (column: number) =>
    cells(column).flatMap((cell) => {
      const read = readFigure(cell);
      // A cell that names its unit itself says nothing about the others.
      return read.kind === 'figure' && read.unit === null ? [read.value] : [];
    });
  const named = (...wanted: readonly number[]) => wanted.flatMap((column) => names[column] ?? []);
  return {
    dates: guessDateOrder(cells(columns.date)),
    air: guessUnit(named(columns.max, columns.min), [...figures(columns.max), ...figures(columns.min)]),
    soil: guessUnit(named(columns.soil), figures(columns.soil)),
    stations: [...new Set(cells(columns.station).filter((cell) => cell !== ''))],
  };
}
