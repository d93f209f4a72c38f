import type { Book, Timing } from '../../book/index.ts';

/** Timings that are reckoned from daily temperatures. */
export type TemperatureTiming = Exclude<Timing, { readonly kind: 'calendar' }>;
/** What makes the soil of a lawn warmer or cooler than that of the station. */
export type Site = NonNullable<Book['properties'][number]['sites']>[number];

/** What is kept of each day: highest and lowest of the air, mean of the soil, F. */
export type SeriesName = 'max' | 'min' | 'soil';

/**
 * Where a figure of a day comes from: a thermometer; a straight line between two measured days; the normal curve of earlier
 * years; or nowhere.
 */
export type Basis = 'measured' | 'interpolated' | 'curve' | 'none';

/** A figure of one day, and where it comes from. */
export type DayFigure = {
  /** F, or degree days F; null where the basis is 'none'. */
  readonly value: number | null;
  readonly basis: Basis;
};

/** Figures of days in a row. */
export type DailySeries = {
  /** Number of the first day, counted from 1970-01-01. */
  readonly first: number;
  readonly figures: readonly DayFigure[];
  /** Number of the last measured day among them; null where none was. */
  readonly lastMeasured: number | null;
};

/**
 * How a date was found. 'measured': by days that were measured or bridged. 'mixed': it is not later than the last measured day, but
 * some days before it are of the normal curve. 'expected': it is later than that. 'calendar': no temperature was asked.
 */
export type DateBasis = 'measured' | 'mixed' | 'expected' | 'calendar';
/** A date (YYYY-MM-DD), and how it was found. */
export type TimingDate = { readonly on: string; readonly basis: DateBasis };

/** The last useful day; or open until further notice, as the closing is never reached; or not known. */
export type TimingEnd =
  | { readonly kind: 'day'; readonly date: TimingDate }
  | { readonly kind: 'open' }
  | { readonly kind: 'unknown'; readonly firstWithout: string };

/** When a treatment is of use in one year, as far as it can be told. */
export type TimingState =
  | { readonly kind: 'window'; readonly opens: TimingDate; readonly best: TimingDate | null; readonly end: TimingEnd }
  /** The opening is never reached, or the closing on the same day. */
  | { readonly kind: 'not-this-year'; readonly why: 'never-reached' | 'passed-at-once' }
  /** There is a day without any figure before the opening is reached; null where no temperatures are kept at all. */
  | { readonly kind: 'unknown'; readonly firstWithout: string | null };

/** Days whose figures were not all measured, and what the curve is made of. */
export type TimingFooting = {
  readonly station: string;
  readonly lastMeasured: string | null;
  /** Days up to the last measured one that a straight line bridges, and those that the normal curve stands in for. */
  readonly interpolated: readonly string[];
  readonly fromCurve: readonly string[];
  /** Days of the season without any figure. */
  readonly without: readonly string[];
  /** Earlier years that the normal curve is made of. */
  readonly curveYears: readonly number[];
  /** By how much the last measured days (seven at most) were above the curve, F; null where one of the two is not known. */
  readonly aboveCurveF: number | null;
};

/** One timing for one kind of site in one season. */
export type TimingResult = {
  readonly timing: Timing;
  /** First and last day of the season that was looked at, YYYY-MM-DD. */
  readonly starts: string;
  readonly ends: string;
  /** What was added to the station's temperatures, F. */
  readonly offsetF: number;
  readonly state: TimingState;
  /**
   * What the thresholds are held against, for each day of the season: the mean of the soil over the days that are averaged, F, or the
   * degree days counted so far. Empty for calendar windows.
   */
  readonly line: readonly DayFigure[];
  readonly footing: TimingFooting | null;
};
