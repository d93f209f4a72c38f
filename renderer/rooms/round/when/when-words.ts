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
import type { Formatter } from '../../../format/index.ts';
import { whenToldWords } from '../../../texts/round/index.ts';

const BASIS_WORDS: Readonly<Record<DateBasis, string>> = whenToldWords.basis;

/** "Sun Apr 4, expected". */
export function dateWords({ on, basis }: TimingDate, words: Formatter): string {
  return whenToldWords.withBasis(words.date(on), BASIS_WORDS[basis]);
}

/** The three dates of a window in words; "–" where there is none. */
export function windowWords(state: TimingState, words: Formatter): Readonly<Record<'opens' | 'best' | 'last', string>> {
  const { none, window } = whenToldWords;
  if (state.kind === 'not-this-year') {
    const why = state.why === 'never-reached' ? window.notThisYear : window.passedInOneDay;
    return { opens: why, best: none, last: none };
  }
  if (state.kind === 'unknown') {
    const { firstWithout } = state;
    const why = firstWithout === null ? window.noTemperatures : window.notKnownFrom(words.date(firstWithout));
    return { opens: why, best: none, last: none };
  }
  const { opens, best, end } = state;
  const last =
    end.kind === 'day'
      ? dateWords(end.date, words)
      : end.kind === 'open'
        ? window.openOn
        : window.notKnownFrom(words.date(end.firstWithout));
  return { opens: dateWords(opens, words), best: best === null ? none : dateWords(best, words), last };
}

/** Where the window stands today, in one sentence. */
export function todayWords({ state }: TimingResult, today: string, words: Formatter): string {
  const told = whenToldWords.today;
  if (state.kind === 'not-this-year') return state.why === 'never-reached' ? told.notReached : told.passedInOneDay;
  if (state.kind === 'unknown') {
    return state.firstWithout === null ? told.noTemperatures : told.notKnown(words.longDate(state.firstWithout));
  }
  const { opens, end } = state;
  if (today < opens.on) return told.opens(words.longDate(opens.on), BASIS_WORDS[opens.basis]);
  if (end.kind === 'day') {
    const last = words.longDate(end.date.on);
    return today > end.date.on ? told.over(last) : told.openUntil(last, BASIS_WORDS[end.date.basis]);
  }
  return end.kind === 'open' ? told.openOn : told.lastNotKnown;
}

/** What the dates stand on: measured days, days that were bridged or are of the curve, and the joint between the two. */
export function footingWords({ footing, timing }: TimingResult, today: string, words: Formatter): readonly string[] {
  if (footing === null || timing.kind === 'calendar') return [];
  const told = whenToldWords.footing;
  return [
    measuredWords(footing, today, words),
    ...curveWords(footing, timing.smoothDays, words),
    ...daysWords(told.bridged, footing.interpolated, words),
    ...daysWords(told.fromCurve, footing.fromCurve, words),
    ...daysWords(told.without, footing.without, words),
  ];
}

function measuredWords({ station, lastMeasured }: TimingFooting, today: string, words: Formatter): string {
  const told = whenToldWords.footing;
  if (lastMeasured === null) return told.nothingMeasured(station);
  return (lastMeasured > today ? told.measuredBeyond : told.measuredTo)(station, words.longDate(lastMeasured));
}

function curveWords(
  { curveYears, aboveCurveF }: TimingFooting,
  smoothDays: number,
  words: Formatter,
): readonly string[] {
  const told = whenToldWords.footing;
  if (curveYears.length === 0) return [told.noEarlierYear];
  const years =
    curveYears.length > 4 ? told.yearsFromTo(String(curveYears[0]), String(curveYears.at(-1))) : curveYears.join(', ');
  const curve = told.curve(curveYears.length, years, smoothDays);
  if (aboveCurveF === null) return [curve];
  const shift = Math.abs(aboveCurveF);
  const difference = words.temperatureDifference(shift).replace('+', '');
  const lay = shift < 0.05 ? told.layOn : (aboveCurveF < 0 ? told.wereBelow : told.wereAbove)(difference);
  return [told.notShifted(curve, lay)];
}

const MOST_RANGES = 6;

function daysWords(what: string, dates: readonly string[], words: Formatter): readonly string[] {
  if (dates.length === 0) return [];
  const told = whenToldWords.footing;
  const ranges = rangesOf(dates);
  const named = ranges
    .slice(0, MOST_RANGES)
    .map(({ from, to }) => (from === to ? words.date(from) : told.fromTo(words.date(from), words.date(to))));
  const rest = ranges.length > MOST_RANGES ? [told.moreSpans(ranges.length - MOST_RANGES)] : [];
  return [told.days(dates.length, what, [...named, ...rest].join(', '))];
}

const FIGURE_WORDS: Readonly<Record<DayFigure['basis'], string>> = whenToldWords.figureBasis;

/** "120 °F days, measured": the figure of one day on the line. */
export function figureWords({ timing }: TimingResult, figure: DayFigure | undefined, words: Formatter): string {
  if (figure?.value == null) return whenToldWords.notKnown;
  const value = timing.kind === 'degree-days' ? words.degreeDays(figure.value) : words.temperature(figure.value);
  return whenToldWords.withBasis(value, FIGURE_WORDS[figure.basis]);
}

function tooEarlyWords(plannedOn: string | null, state: TimingState, words: Formatter): string {
  const opens = state.kind === 'window' ? words.date(state.opens.on) : '';
  const told = whenToldWords.misses;
  return plannedOn === null ? told.roundBeforeOpening(opens) : told.plannedBefore(words.date(plannedOn), opens);
}

/** Why a lawn will miss its window, in words. */
export function missWords({ verdict, plannedOn }: LawnTiming, { state }: TimingResult, words: Formatter): string {
  const last = state.kind === 'window' && state.end.kind === 'day' ? words.date(state.end.date.on) : '';
  const told = whenToldWords.misses;
  switch (verdict) {
    case 'over':
      return told.past(last);
    case 'too-late':
      return told.plannedAfter(words.date(plannedOn ?? ''), last);
    case 'at-risk':
      return told.atRisk(last);
    case 'never':
      return told.never;
    case 'too-early':
      return tooEarlyWords(plannedOn, state, words);
    default:
      return '';
  }
}
