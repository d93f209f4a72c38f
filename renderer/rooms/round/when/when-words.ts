import {
  type DateBasis,
  type DayFigure,
  type LawnTiming,
  rangesOf,
  type TimingDate,
  type TimingFooting,
  type TimingResult,
  type TimingState,
} from '../../../../core/round/timing/index.ts';
import { counted, type Formatter } from '../../../format/index.ts';

const BASIS_WORDS: Readonly<Record<DateBasis, string>> = {
  measured: 'measured',
  mixed: 'partly measured',
  expected: 'expected',
  calendar: 'by the calendar',
};

/** "Sun Apr 4, expected". */
export function dateWords({ on, basis }: TimingDate, words: Formatter): string {
  return `${words.date(on)}, ${BASIS_WORDS[basis]}`;
}

/** The three dates of a window in words; "–" where there is none. */
export function windowWords(state: TimingState, words: Formatter): Readonly<Record<'opens' | 'best' | 'last', string>> {
  if (state.kind === 'not-this-year') {
    const why = state.why === 'never-reached' ? 'not this year' : 'not this year: passed in one day';
    return { opens: why, best: '–', last: '–' };
  }
  if (state.kind === 'unknown') {
    const why =
      state.firstWithout === null ? 'no temperatures yet' : `not known from ${words.date(state.firstWithout)} on`;
    return { opens: why, best: '–', last: '–' };
  }
  const { opens, best, end } = state;
  const last =
    end.kind === 'day'
      ? dateWords(end.date, words)
      : end.kind === 'open'
        ? 'open until further notice'
        : `not known from ${words.date(end.firstWithout)} on`;
  return { opens: dateWords(opens, words), best: best === null ? '–' : dateWords(best, words), last };
}

/** Where the window stands today, in one sentence. */
export function todayWords({ state }: TimingResult, today: string, words: Formatter): string {
  if (state.kind === 'not-this-year') {
    return state.why === 'never-reached'
      ? 'Not this year: the opening is not reached.'
      : 'Not this year: opening and closing are reached on the same day.';
  }
  if (state.kind === 'unknown') {
    return state.firstWithout === null
      ? 'No temperatures yet: read them from a file or type them below.'
      : `Not known: there is no temperature for ${words.longDate(state.firstWithout)}, and no earlier year to stand in for it.`;
  }
  const { opens, end } = state;
  if (today < opens.on) return `Opens ${words.longDate(opens.on)} (${BASIS_WORDS[opens.basis]}).`;
  if (end.kind === 'day') {
    if (today > end.date.on) return `Over: the last useful day was ${words.longDate(end.date.on)}.`;
    return `Open now, until ${words.longDate(end.date.on)} (${BASIS_WORDS[end.date.basis]}).`;
  }
  return end.kind === 'open' ? 'Open until further notice.' : 'Open now; the last useful day is not known.';
}

/** What the dates stand on: measured days, days that were bridged or are of the curve, and the joint between the two. */
export function footingWords({ footing, timing }: TimingResult, today: string, words: Formatter): readonly string[] {
  if (footing === null || timing.kind === 'calendar') return [];
  return [
    measuredWords(footing, today, words),
    ...curveWords(footing, timing.smoothDays, words),
    ...daysWords('bridged by a straight line', footing.interpolated, words),
    ...daysWords('not measured, the normal curve stands in', footing.fromCurve, words),
    ...daysWords('without any figure', footing.without, words),
  ];
}

function measuredWords({ station, lastMeasured }: TimingFooting, today: string, words: Formatter): string {
  if (lastMeasured === null) return `${station}: nothing measured in this season yet.`;
  const measured = `${station}: measured up to ${words.longDate(lastMeasured)}`;
  return lastMeasured > today ? `${measured}; what comes after today counts as measured too.` : `${measured}.`;
}

function curveWords(
  { curveYears, aboveCurveF }: TimingFooting,
  smoothDays: number,
  words: Formatter,
): readonly string[] {
  if (curveYears.length === 0) return ['There is no earlier year, so nothing can be said of the days ahead.'];
  const years = curveYears.length > 4 ? `${curveYears[0]} to ${curveYears.at(-1)}` : curveYears.join(', ');
  const curve = `Days ahead are the normal curve of ${counted(curveYears.length, 'earlier year')} (${years}): the mean of the years for each day, then over ${smoothDays} days on each side.`;
  if (aboveCurveF === null) return [curve];
  const shift = Math.abs(aboveCurveF);
  const side = aboveCurveF < 0 ? 'below' : 'above';
  const lay = shift < 0.05 ? 'lay on' : `were ${words.temperatureDifference(shift).replace('+', '')} ${side}`;
  return [`${curve} It is not shifted to meet the measured days, which lately ${lay} it.`];
}

const MOST_RANGES = 6;

function daysWords(what: string, dates: readonly string[], words: Formatter): readonly string[] {
  if (dates.length === 0) return [];
  const ranges = rangesOf(dates);
  const named = ranges
    .slice(0, MOST_RANGES)
    .map(({ from, to }) => (from === to ? words.date(from) : `${words.date(from)} to ${words.date(to)}`));
  const rest = ranges.length > MOST_RANGES ? `, and ${ranges.length - MOST_RANGES} more spans` : '';
  return [`${counted(dates.length, 'day')} ${what}: ${named.join(', ')}${rest}.`];
}

const FIGURE_WORDS: Readonly<Record<DayFigure['basis'], string>> = {
  measured: 'measured',
  interpolated: 'bridged',
  curve: 'expected',
  none: 'not known',
};

/** "120 °F days, measured": the figure of one day on the line. */
export function figureWords({ timing }: TimingResult, figure: DayFigure | undefined, words: Formatter): string {
  if (figure?.value == null) return 'not known';
  const value = timing.kind === 'degree-days' ? words.degreeDays(figure.value) : words.temperature(figure.value);
  return `${value}, ${FIGURE_WORDS[figure.basis]}`;
}

function tooEarlyWords(plannedOn: string | null, state: TimingState, words: Formatter): string {
  const opens = state.kind === 'window' ? words.date(state.opens.on) : '';
  if (plannedOn === null) return `the last working day of the round comes before it opens, ${opens}`;
  return `planned on ${words.date(plannedOn)}, before it opens, ${opens}`;
}

/** Why a lawn will miss its window, in words. */
export function missWords({ verdict, plannedOn }: LawnTiming, { state }: TimingResult, words: Formatter): string {
  const last = state.kind === 'window' && state.end.kind === 'day' ? words.date(state.end.date.on) : '';
  switch (verdict) {
    case 'over':
      return `the last useful day, ${last}, is past`;
    case 'too-late':
      return `planned on ${words.date(plannedOn ?? '')}, after the last useful day, ${last}`;
    case 'at-risk':
      return `no day yet, and the round goes on after the last useful day, ${last}`;
    case 'never':
      return 'there is no useful day this year';
    case 'too-early':
      return tooEarlyWords(plannedOn, state, words);
    default:
      return '';
  }
}
