import { type Issue, issue } from '../../base/index.ts';
import type { TemperatureYear } from '../../book/index.ts';
import { daysBetween, formatNumber } from '../../units/index.ts';
import { type DateOrder, readDate } from './dates.ts';
import { type DegreeUnit, readFigure, toFahrenheit } from './degree-figures.ts';
import type { Table, TableRow } from './table.ts';
import type { TemperatureColumns } from './temperature-columns.ts';

/** Date, highest and lowest of the air, mean of the soil, degrees Fahrenheit; null where it was not read. */
export type TemperatureDay = TemperatureYear['days'][number];

/** How a table of temperatures is to be read: what was guessed, and what was answered. */
export type TemperatureAnswers = {
  readonly columns: TemperatureColumns;
  readonly dateOrder: DateOrder | null;
  readonly airUnit: DegreeUnit;
  readonly soilUnit: DegreeUnit;
  /** Only rows of this station; null for all rows. */
  readonly station: string | null;
};

/** Daily temperatures out of a table. `accepted + rejected + empty + elsewhere = found`, counted in rows. */
export type TemperatureReading = {
  /** In order of date, in F. */
  readonly days: readonly TemperatureDay[];
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  /** Rows with a date and no figure. */
  readonly empty: number;
  /** Rows of other stations. */
  readonly elsewhere: number;
  readonly issues: readonly Issue[];
};

/** Beyond these no air and no soil has been, F. */
const LIMITS = { air: { least: -80, most: 135 }, soil: { least: -40, most: 150 } } as const;
/** From one day to the next, F; a change of unit inside a file shows so. */
const JUMP_F = 35;

/**
 * Reads daily temperatures. Nothing is dropped in silence: a row with an unreadable date or figure, with a figure that no weather has, with a
 * highest below its lowest, or with a day that stands before it is rejected and named by its row. Every figure is brought to F.
 */
export function readTemperatures({ rows }: Table, answers: TemperatureAnswers, where: string): TemperatureReading {
  const issues: Issue[] = [];
  const days = new Map<string, { readonly day: TemperatureDay; readonly number: number }>();
  let [rejected, empty, elsewhere] = [0, 0, 0];
  const reject = (number: number, code: string, message: string) => {
    rejected += 1;
    issues.push(issue('error', code, `${where}, row ${number}`, message));
  };
  for (const row of rows) {
    if (answers.station !== null && cellOf(row, answers.columns.station) !== answers.station) {
      elsewhere += 1;
      continue;
    }
    const read = readRow(row, answers);
    if (read.kind === 'fault') {
      reject(row.number, read.code, read.message);
      continue;
    }
    const before = days.get(read.day[0]);
    if (before !== undefined) {
      reject(
        row.number,
        'duplicate-day',
        `${read.day[0]} stands in row ${before.number} already. Keep one row for each day.`,
      );
    } else if (read.day.slice(1).every((each) => each === null)) empty += 1;
    else days.set(read.day[0], { day: read.day, number: row.number });
  }
  const sorted = [...days.values()].toSorted((left, right) => (left.day[0] < right.day[0] ? -1 : 1));
  return {
    days: sorted.map((each) => each.day),
    found: rows.length,
    accepted: sorted.length,
    rejected,
    empty,
    elsewhere,
    issues: [...issues, ...jumps(sorted, where)],
  };
}

function cellOf(row: TableRow, column: number): string {
  return column < 0 ? '' : (row.cells[column] ?? '');
}

type RowReading =
  | { readonly kind: 'day'; readonly day: TemperatureDay }
  | { readonly kind: 'fault'; readonly code: string; readonly message: string };

function fault(code: string, message: string): RowReading {
  return { kind: 'fault', code, message };
}

function readRow(row: TableRow, { columns, dateOrder, airUnit, soilUnit }: TemperatureAnswers): RowReading {
  if (row.fault !== null) return fault('row-malformed', `The row cannot be read: ${row.fault}.`);
  const dateText = cellOf(row, columns.date);
  const date = readDate(dateText, dateOrder);
  if (date === null) {
    return fault(
      'date-unreadable',
      `"${dateText.slice(0, 40)}" is no date as the other rows have it, or no day of the calendar.`,
    );
  }
  const figures: (number | null)[] = [];
  for (const [name, unit, limits] of [
    ['max', airUnit, LIMITS.air],
    ['min', airUnit, LIMITS.air],
    ['soil', soilUnit, LIMITS.soil],
  ] as const) {
    const text = cellOf(row, columns[name]);
    const read = readFigure(text);
    if (read.kind === 'unreadable') return fault('row-malformed', `"${text.slice(0, 40)}" is no temperature.`);
    const value = read.kind === 'none' ? null : toFahrenheit(read.value, read.unit ?? unit);
    if (value !== null && (value < limits.least || value > limits.most)) {
      const place = name === 'soil' ? 'soil' : 'air';
      return fault(
        'temperature-absurd',
        `"${text.slice(0, 40)}" is ${formatNumber(value)} F; no ${place} has been so ${value < 0 ? 'cold' : 'warm'}.`,
      );
    }
    figures.push(value);
  }
  const [max = null, min = null, soil = null] = figures;
  if (max !== null && min !== null && max < min) {
    return fault(
      'temperature-absurd',
      `The highest, ${formatNumber(max, 1)} F, is below the lowest, ${formatNumber(min, 1)} F.`,
    );
  }
  return { kind: 'day', day: [date, max, min, soil] };
}

type Numbered = { readonly day: TemperatureDay; readonly number: number };

/** Leaps from one day to the next: named, not refused. */
function jumps(days: readonly Numbered[], where: string): readonly Issue[] {
  return days.flatMap(({ day, number }, index) => {
    const before = days[index - 1]?.day;
    if (before === undefined || daysBetween(before[0], day[0]) !== 1) return [];
    const most = Math.max(
      ...([1, 2, 3] as const).map((place) => {
        const [one, other] = [before[place], day[place]];
        return one === null || other === null ? 0 : Math.abs(other - one);
      }),
    );
    if (most <= JUMP_F) return [];
    const message = `From ${before[0]} to ${day[0]} a temperature changes by ${formatNumber(most)} F. Check whether the unit changes here.`;
    return [issue('warning', 'temperature-jump', `${where}, row ${number}`, message)];
  });
}
