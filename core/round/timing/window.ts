import type { Book, Timing } from '../../book/index.ts';
import { addDays, dateOfDay, dayNumber } from '../../units/index.ts';
import {
  dayBases,
  lastMeasuredDay,
  SEASON_DAYS,
  type SeasonTemperatures,
  seasonLine,
  seasonTemperatures,
} from './lines.ts';
import { nextInYear, seasonStart } from './season.ts';
import { stationOf } from './station.ts';
import type {
  DateBasis,
  DayFigure,
  TemperatureTiming,
  TimingDate,
  TimingEnd,
  TimingFooting,
  TimingResult,
  TimingState,
} from './types.ts';

/** A timing in one season, ready to be asked for any site. */
export type TimingSeason = {
  readonly timing: Timing;
  readonly starts: string;
  readonly ends: string;
  /** The window where the site adds so much to every temperature of the station, F. */
  readonly at: (offsetF: number) => TimingResult;
};

/**
 * Makes a timing ready for the season that a day belongs to. The temperatures and their normal curve are prepared once for all sites.
 *
 * @param reference first working day of the round, or today
 */
export function timingSeason(book: Pick<Book, 'temperatures'>, timing: Timing, reference: string): TimingSeason {
  const starts = seasonStart(timing, reference);
  const ends = addDays(starts, SEASON_DAYS - 1);
  if (timing.kind === 'calendar') {
    const state = calendarState(timing, starts);
    const at = (offsetF: number): TimingResult => ({ timing, starts, ends, offsetF, state, line: [], footing: null });
    return { timing, starts, ends, at };
  }
  const station = stationOf(book, timing.station);
  if (station === null) {
    const state: TimingState = { kind: 'unknown', firstWithout: null };
    return {
      timing,
      starts,
      ends,
      at: (offsetF) => ({ timing, starts, ends, offsetF, state, line: [], footing: null }),
    };
  }
  const temperatures = seasonTemperatures(station, timing, dayNumber(starts), Number(starts.slice(0, 4)));
  const footing = footingOf(temperatures);
  return {
    timing,
    starts,
    ends,
    at: (offsetF) => {
      const line = seasonLine(temperatures, timing, offsetF);
      return { timing, starts, ends, offsetF, state: stateOf(timing, line, temperatures), line, footing };
    },
  };
}

function calendarState(timing: Extract<Timing, { readonly kind: 'calendar' }>, starts: string): TimingState {
  const closes = nextInYear(timing.closes, starts);
  const best = timing.best === undefined ? null : nextInYear(timing.best, starts);
  return {
    kind: 'window',
    opens: { on: starts, basis: 'calendar' },
    best: best === null || best > closes ? null : { on: best, basis: 'calendar' },
    end: { kind: 'day', date: { on: closes, basis: 'calendar' } },
  };
}

/** Thresholds of a timing, each with the test of one day's figure; null where none is set. */
type Thresholds = {
  readonly opens: ((figure: number) => boolean) | null;
  readonly best: ((figure: number) => boolean) | null;
  readonly closes: (figure: number) => boolean;
  readonly forDays: number;
};

/**
 * Counts and rising soil reach a threshold at it or above it. Falling soil reaches its opening and its best at them or below; it closes
 * below the closing only, as in "soil falling below 56 F".
 */
function thresholdsOf(timing: TemperatureTiming): Thresholds {
  const least = (limit: number) => (figure: number) => figure >= limit;
  const most = (limit: number) => (figure: number) => figure <= limit;
  if (timing.kind === 'degree-days') {
    const { opensAt, bestAt, closesAt } = timing;
    return { opens: least(opensAt), best: given(bestAt, least), closes: least(closesAt), forDays: 1 };
  }
  const { opensAtF, bestAtF, closesAtF, forDays, course } = timing;
  if (course === 'rising') {
    return { opens: given(opensAtF, least), best: given(bestAtF, least), closes: least(closesAtF), forDays };
  }
  return { opens: given(opensAtF, most), best: given(bestAtF, most), closes: (figure) => figure < closesAtF, forDays };
}

function given<Test>(limit: number | undefined, make: (limit: number) => Test): Test | null {
  return limit === undefined ? null : make(limit);
}

/**
 * The place of the day on which a threshold counts: the first one that ends so many days in a row, all of them in the season, of which
 * each reaches it; -1 where there is none.
 */
function reachedAt(line: readonly DayFigure[], isReached: (figure: number) => boolean, forDays: number): number {
  let inRow = 0;
  for (const [index, { value }] of line.entries()) {
    inRow = value !== null && isReached(value) ? inRow + 1 : 0;
    if (inRow >= forDays) return index;
  }
  return -1;
}

/** The window is open from the day on which the opening counts to the day before the one on which the closing does. */
function stateOf(timing: TemperatureTiming, line: readonly DayFigure[], temperatures: SeasonTemperatures): TimingState {
  const { opens, best, closes, forDays } = thresholdsOf(timing);
  const dateAt = dates(line, temperatures);
  const without = line.findIndex((each) => each.value === null);
  const openAt = opens === null ? 0 : reachedAt(line, opens, forDays);
  if (openAt < 0) {
    if (without >= 0) return { kind: 'unknown', firstWithout: dateOfDay(temperatures.first + without) };
    return { kind: 'not-this-year', why: 'never-reached' };
  }
  const closeAt = reachedAt(line, closes, forDays);
  if (closeAt >= 0 && closeAt <= openAt) return { kind: 'not-this-year', why: 'passed-at-once' };
  const bestAt = best === null ? -1 : reachedAt(line, best, forDays);
  const isBestInside = bestAt >= openAt && (closeAt < 0 || bestAt < closeAt);
  return {
    kind: 'window',
    opens: opens === null ? { on: dateOfDay(temperatures.first), basis: 'calendar' } : dateAt(openAt),
    best: isBestInside ? dateAt(bestAt) : null,
    end: endOf(line, openAt, closeAt, dateAt, temperatures.first),
  };
}

function endOf(
  line: readonly DayFigure[],
  openAt: number,
  closeAt: number,
  dateAt: (index: number) => TimingDate,
  first: number,
): TimingEnd {
  if (closeAt >= 0) {
    return { kind: 'day', date: { on: dateOfDay(first + closeAt - 1), basis: dateAt(closeAt).basis } };
  }
  const without = line.findIndex((each, index) => index > openAt && each.value === null);
  return without < 0 ? { kind: 'open' } : { kind: 'unknown', firstWithout: dateOfDay(first + without) };
}

/** Dates by their place in the season, with how certain they are. */
function dates(line: readonly DayFigure[], temperatures: SeasonTemperatures): (index: number) => TimingDate {
  const { first } = temperatures;
  const lastMeasured = lastMeasuredDay(temperatures) ?? Number.NEGATIVE_INFINITY;
  const uncertain = line.findIndex((each) => each.basis === 'curve' || each.basis === 'none');
  return (index) => {
    const basis: DateBasis =
      first + index > lastMeasured ? 'expected' : uncertain >= 0 && uncertain <= index ? 'mixed' : 'measured';
    return { on: dateOfDay(first + index), basis };
  };
}

const RECENT_DAYS = 7;

function footingOf(temperatures: SeasonTemperatures): TimingFooting {
  const { station, first, curves } = temperatures;
  const last = lastMeasuredDay(temperatures);
  const bases = dayBases(temperatures);
  const daysOf = (basis: DayFigure['basis'], until: number) =>
    bases.flatMap((each, index) => (each === basis && first + index <= until ? [dateOfDay(first + index)] : []));
  const measuredUntil = last ?? Number.NEGATIVE_INFINITY;
  return {
    station: station.name,
    lastMeasured: last === null ? null : dateOfDay(last),
    interpolated: daysOf('interpolated', measuredUntil),
    fromCurve: daysOf('curve', measuredUntil),
    without: daysOf('none', Number.POSITIVE_INFINITY),
    curveYears: [...new Set(Object.values(curves).flatMap((each) => each.years))].toSorted((a, b) => a - b),
    aboveCurveF: last === null ? null : aboveCurve(temperatures, last),
  };
}

/** How far the measured days of the last week lie above the curve, in the mean of everything that is asked for. */
function aboveCurve({ station, curves, first }: SeasonTemperatures, last: number): number | null {
  const differences: number[] = [];
  for (const name of ['max', 'min', 'soil'] as const) {
    for (let day = Math.max(first, last - RECENT_DAYS + 1); day <= last; day += 1) {
      const measured = station.series[name].get(day);
      const normal = curves[name]?.at(day) ?? null;
      if (measured !== undefined && normal !== null) differences.push(measured - normal);
    }
  }
  return differences.length === 0 ? null : differences.reduce((sum, each) => sum + each, 0) / differences.length;
}
