import { type DateGuess, guessDateOrder } from './dates.ts';
import { guessUnit, readFigure, type UnitGuess } from './degree-figures.ts';
import { findColumn, plain, type Table } from './table.ts';

/** What the columns of a table of weather are for; -1 where there is none. */
export type WeatherColumns = {
  readonly date: number;
  /** Hour or time of day; -1 where the date says it. */
  readonly time: number;
  readonly wind: number;
  readonly air: number;
  readonly rain: number;
};

/** Units in which a file may give wind. */
export const WIND_UNITS = ['mph', 'km/h', 'm/s', 'kn'] as const;
/** One of them: miles or kilometres an hour, metres a second, knots. */
export type WindUnit = (typeof WIND_UNITS)[number];
/** Units in which a file may give rain. */
export const RAIN_UNITS = ['in', 'mm'] as const;
/** One of them: inches or millimetres. */
export type RainUnit = (typeof RAIN_UNITS)[number];

/** What can be seen in a table of weather before anything is asked; null where a unit has to be asked. */
export type WeatherGuess = {
  readonly dates: DateGuess;
  readonly air: UnitGuess;
  readonly wind: WindUnit | null;
  readonly rain: RainUnit | null;
};

const DATES = ['date', 'day', 'datetime', 'timestamp', 'obsdate', 'observationdate', 'validtime', 'valid'];
const TIMES = ['hour', 'time', 'timeofday', 'hourofday', 'hr', 'localtime'];

/** Looks for the columns by their names. */
export function guessWeatherColumns(names: readonly string[]): WeatherColumns {
  const words = names.map(plain);
  const find = (expression: RegExp, other: RegExp) =>
    words.findIndex((word) => expression.test(word) && !other.test(word));
  const date = findColumn(names, DATES);
  const time = findColumn(names, TIMES);
  return {
    // A lone column "time" holds the date as well.
    date: date < 0 ? time : date,
    time: date < 0 ? -1 : time,
    wind: find(/wind/, /dir|gust|chill|bearing/),
    air: find(/air|temp|^ta$|^t$/, /soil|dew|wet|chill|feels|apparent/),
    rain: find(/rain|precip|^pcp/, /prob|chance|type/),
  };
}

/** True for a table with a date, a time and one of wind and rain. */
export function looksLikeWeather({ columns, rows }: Table): boolean {
  const { date, time, wind, rain } = guessWeatherColumns(columns);
  const timed = time >= 0 || (date >= 0 && hasTime(rows[0]?.cells[date] ?? ''));
  return date >= 0 && timed && (wind >= 0 || rain >= 0);
}

export function hasTime(cell: string): boolean {
  return /(?:T|\s)\d{1,2}:\d{2}/.test(cell);
}

/** What the cells of the chosen columns say about dates and units. */
export function guessWeather({ columns: names, rows }: Table, columns: WeatherColumns): WeatherGuess {
  const cells = (column: number) => (column < 0 ? [] : rows.map((row) => row.cells[column] ?? ''));
  const degrees = cells(columns.air).flatMap((cell) => {
    const read = readFigure(cell);
    return read.kind === 'figure' && read.unit === null ? [read.value] : [];
  });
  return {
    dates: guessDateOrder(cells(columns.date)),
    air: guessUnit(columns.air < 0 ? [] : [names[columns.air] ?? ''], degrees),
    wind: columns.wind < 0 ? 'mph' : statedWind(names[columns.wind] ?? ''),
    rain: columns.rain < 0 ? 'in' : statedRain(names[columns.rain] ?? ''),
  };
}

function statedWind(name: string): WindUnit | null {
  if (/mph|mi\/h|miles/i.test(name)) return 'mph';
  if (/km\s*\/?\s*h|kph/i.test(name)) return 'km/h';
  if (/m\/s|mps\b|m s-1|_ms\b/i.test(name)) return 'm/s';
  return /knots?|\bkn\b|\bkts?\b/i.test(name) ? 'kn' : null;
}

function statedRain(name: string): RainUnit | null {
  if (/mm|millimet/i.test(name)) return 'mm';
  return /\binch|[([_\s,]in(?:[)\]\s.,]|$)|"/i.test(name) ? 'in' : null;
}
