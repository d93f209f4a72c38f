import { type Issue, issue } from '../../base/index.ts';
import type { WeatherDay } from '../../book/index.ts';
import { formatNumber, METRES_PER_MILE, parseClock } from '../../units/index.ts';
import { type DateOrder, readDate } from './dates.ts';
import { type DegreeUnit, readFigure, toFahrenheit } from './degree-figures.ts';
import type { Table, TableRow } from './table.ts';
import type { RainUnit, WeatherColumns, WindUnit } from './weather-columns.ts';

/** How a table of weather is to be read: what was guessed, and what was answered. */
export type WeatherAnswers = {
  readonly columns: WeatherColumns;
  readonly dateOrder: DateOrder | null;
  readonly airUnit: DegreeUnit;
  readonly windUnit: WindUnit;
  readonly rainUnit: RainUnit;
};

/** The hours of one day as a file gives them: miles an hour, degrees Fahrenheit, inches. */
export type WeatherHours = Pick<WeatherDay, 'on' | 'hours'>;

/** Weather by the hour out of a table. `accepted + rejected + empty = found`, counted in rows. */
export type WeatherReading = {
  /** In order of date, hours in order. mph, F, in */
  readonly days: readonly WeatherHours[];
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  /** Rows with a date and no figure. */
  readonly empty: number;
  readonly issues: readonly Issue[];
};

const KM_PER_MILE = METRES_PER_MILE / 1000;
const TO_MPH: Readonly<Record<WindUnit, number>> = {
  mph: 1,
  'km/h': 1 / KM_PER_MILE,
  'm/s': 3.6 / KM_PER_MILE,
  // A knot is 1,852 m in an hour.
  kn: 1.852 / KM_PER_MILE,
};
const TO_INCHES: Readonly<Record<RainUnit, number>> = { in: 1, mm: 1 / 25.4 };
/** Beyond these no hour has been on a working day: mph, F, in. */
const MOST = { wind: 150, rain: 12 } as const;
const AIR = { least: -80, most: 135 } as const;

type Reading = { readonly wind: number | null; readonly air: number | null; readonly rain: number | null };
type RowReading =
  | { readonly kind: 'hour'; readonly on: string; readonly hour: number; readonly reading: Reading }
  | { readonly kind: 'fault'; readonly code: string; readonly message: string };

/**
 * Reads weather by the hour. A row with an unreadable date, time or figure, or with a figure that no weather has, is rejected and named by its
 * row. Of several rows in one hour the strongest wind, the mean of the air and the sum of the rain count.
 */
export function readWeather({ rows }: Table, answers: WeatherAnswers, where: string): WeatherReading {
  const issues: Issue[] = [];
  const days = new Map<string, Map<number, Reading[]>>();
  let [accepted, rejected, empty] = [0, 0, 0];
  for (const row of rows) {
    const read = readRow(row, answers);
    if (read.kind === 'fault') {
      rejected += 1;
      issues.push(issue('error', read.code, `${where}, row ${row.number}`, read.message));
    } else if (Object.values(read.reading).every((each) => each === null)) empty += 1;
    else {
      accepted += 1;
      const day = days.get(read.on) ?? new Map<number, Reading[]>();
      days.set(read.on, day);
      day.set(read.hour, [...(day.get(read.hour) ?? []), read.reading]);
    }
  }
  const sorted = [...days].toSorted(([one], [other]) => (one < other ? -1 : 1));
  return {
    days: sorted.map(([on, hours]) => ({
      on,
      hours: [...hours].toSorted(([one], [other]) => one - other).map(([hour, readings]) => together(hour, readings)),
    })),
    found: rows.length,
    accepted,
    rejected,
    empty,
    issues,
  };
}

function together(hour: number, readings: readonly Reading[]): WeatherDay['hours'][number] {
  const known = (member: keyof Reading): readonly number[] => readings.flatMap((each) => each[member] ?? []);
  const sum = (figures: readonly number[]): number => figures.reduce((total, each) => total + each, 0);
  const [wind, air, rain] = [known('wind'), known('air'), known('rain')];
  return {
    hour,
    ...(wind.length === 0 ? {} : { windMph: rounded(Math.max(...wind)) }),
    ...(air.length === 0 ? {} : { airF: rounded(sum(air) / air.length) }),
    ...(rain.length === 0 ? {} : { rainIn: rounded(sum(rain), 1000) }),
  };
}

/** No tails of digits from other units. */
function rounded(value: number, parts = 100): number {
  return Math.round(value * parts) / parts;
}

function readRow(row: TableRow, answers: WeatherAnswers): RowReading {
  const { columns, dateOrder } = answers;
  const cell = (column: number): string => (column < 0 ? '' : (row.cells[column] ?? ''));
  if (row.fault !== null) return fault('row-malformed', `The row cannot be read: ${row.fault}.`);
  const on = readDate(cell(columns.date), dateOrder);
  if (on === null) {
    const text = cell(columns.date).slice(0, 40);
    return fault('date-unreadable', `"${text}" is no date as the other rows have it, or no day of the calendar.`);
  }
  const time = columns.time < 0 ? timeIn(cell(columns.date)) : cell(columns.time);
  const hour = hourOf(time);
  if (hour === null) return fault('time-unreadable', `"${time.slice(0, 40)}" is no time of the day.`);
  const reading = readingOf(answers, cell);
  return typeof reading === 'string' ? fault('row-malformed', reading) : { kind: 'hour', on, hour, reading };
}

function fault(code: string, message: string): RowReading {
  return { kind: 'fault', code, message };
}

function timeIn(text: string): string {
  return /(?:T|\s)(\d{1,2}:\d{2}(?::\d{2})?(?:\s*[ap]\.?m\.?)?)/i.exec(text)?.[1] ?? '';
}

/** The hour of a time of day: "13", "13:45", "1 pm"; null for anything else and for 24:00, which is of the next day. */
function hourOf(text: string): number | null {
  if (text.trim() === '') return null;
  const seconds = parseClock(text);
  const hour = seconds.ok ? Math.floor(seconds.value / 3600) : 24;
  return hour > 23 ? null : hour;
}

/** The figures of a row in mph, F and in; or what is wrong with one of them. */
function readingOf(answers: WeatherAnswers, cell: (column: number) => string): Reading | string {
  const figures: Record<keyof Reading, number | null> = { wind: null, air: null, rain: null };
  for (const name of ['wind', 'air', 'rain'] as const) {
    const text = cell(answers.columns[name]);
    const read = /^t(?:race)?$/i.test(text) && name === 'rain' ? TRACE : readFigure(text);
    if (read.kind === 'unreadable') return `"${text.slice(0, 40)}" is no figure of ${name}.`;
    if (read.kind === 'none') continue;
    const value = inOurUnit(name, read.value, read.unit, answers);
    if (isAbsurd(name, value))
      return `"${text.slice(0, 40)}" would be ${formatNumber(value, 1)} ${UNIT_WORDS[name]}; no hour has that.`;
    figures[name] = value;
  }
  return figures;
}

/** A trace of rain is rain too little to be measured: the least that counts. */
const TRACE = { kind: 'figure', value: 0.005, unit: null } as const;
const UNIT_WORDS = { wind: 'mph of wind', air: '°F', rain: 'in of rain' } as const;

function inOurUnit(name: keyof Reading, value: number, unit: DegreeUnit | null, answers: WeatherAnswers): number {
  if (name === 'air') return toFahrenheit(value, unit ?? answers.airUnit);
  return value * (name === 'wind' ? TO_MPH[answers.windUnit] : TO_INCHES[answers.rainUnit]);
}

function isAbsurd(name: keyof Reading, value: number): boolean {
  if (name === 'air') return value < AIR.least || value > AIR.most;
  return value < 0 || value > MOST[name];
}
