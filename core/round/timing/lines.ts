import { degreeDays } from './degree-days.ts';
import { type NormalCurve, normalCurve } from './normal.ts';
import { dailySeries, worst } from './series.ts';
import type { Station } from './station.ts';
import type { DailySeries, DayFigure, SeriesName, TemperatureTiming } from './types.ts';

/** Days of a season. */
export const SEASON_DAYS = 365;

/** The temperatures that one timing needs in one season, before any site is thought of. */
export type SeasonTemperatures = {
  readonly station: Station;
  /** Number of the season's first day. */
  readonly first: number;
  /** Days before the season that the first mean reaches back to. */
  readonly lead: number;
  readonly series: Partial<Readonly<Record<SeriesName, DailySeries>>>;
  readonly curves: Partial<Readonly<Record<SeriesName, NormalCurve>>>;
};

/**
 * Reads what a timing needs out of a station, with the normal curve of the years before the season's.
 *
 * @param first number of the season's first day
 * @param year year of that day
 */
export function seasonTemperatures(
  station: Station,
  timing: TemperatureTiming,
  first: number,
  year: number,
): SeasonTemperatures {
  const names: readonly SeriesName[] = timing.kind === 'degree-days' ? ['max', 'min'] : ['soil'];
  const lead = timing.kind === 'degree-days' ? 0 : timing.meanOfDays - 1;
  const series: Partial<Record<SeriesName, DailySeries>> = {};
  const curves: Partial<Record<SeriesName, NormalCurve>> = {};
  for (const name of names) {
    const readings = station.series[name];
    const curve = normalCurve(readings, year, timing.smoothDays);
    curves[name] = curve;
    series[name] = dailySeries(readings, curve, timing.gapDays, first - lead, SEASON_DAYS + lead);
  }
  return { station, first, lead, series, curves };
}

/** The number of the last day on which everything was measured that the timing asks for; null where there is none. */
export function lastMeasuredDay({ series, first }: SeasonTemperatures): number | null {
  const days = Object.values(series).map((each) => each.lastMeasured ?? Number.NEGATIVE_INFINITY);
  const last = Math.min(...days);
  return last >= first ? last : null;
}

/**
 * What the thresholds are held against, for each day of the season: the mean of the soil over the last days, F, or the degree days that
 * were counted from the season's first day on. A day without a figure ends a count and leaves means out.
 *
 * @param offsetF what the site adds to every temperature, F
 */
export function seasonLine(temperatures: SeasonTemperatures, timing: TemperatureTiming, offsetF: number): DayFigure[] {
  return timing.kind === 'degree-days'
    ? counted(temperatures, timing.baseF, offsetF)
    : averaged(temperatures, timing.meanOfDays, offsetF);
}

/** Where each day's own figures come from, for each day of the season. */
export function dayBases({ series, lead }: SeasonTemperatures): readonly DayFigure['basis'][] {
  const all = Object.values(series);
  return Array.from({ length: SEASON_DAYS }, (_, day) =>
    worst(all.map((each) => each.figures[day + lead]?.basis ?? 'none')),
  );
}

function counted({ series }: SeasonTemperatures, baseF: number, offsetF: number): DayFigure[] {
  let sum = 0;
  let isKnown = true;
  return Array.from({ length: SEASON_DAYS }, (_, day) => {
    const max = series.max?.figures[day];
    const min = series.min?.figures[day];
    if (max?.value == null || min?.value == null) isKnown = false;
    else sum += degreeDays(max.value + offsetF, min.value + offsetF, baseF);
    if (!isKnown) return { value: null, basis: 'none' };
    return { value: sum, basis: worst([max?.basis ?? 'none', min?.basis ?? 'none']) };
  });
}

function averaged({ series }: SeasonTemperatures, meanOfDays: number, offsetF: number): DayFigure[] {
  const figures = series.soil?.figures ?? [];
  return Array.from({ length: SEASON_DAYS }, (_, day) => {
    const span = figures.slice(day, day + meanOfDays);
    const basis = worst(span.map((each) => each.basis));
    if (basis === 'none') return { value: null, basis };
    return { value: span.reduce((sum, each) => sum + (each.value ?? 0), 0) / meanOfDays + offsetF, basis };
  });
}
