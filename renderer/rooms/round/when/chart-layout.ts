import { scaleLinear } from 'd3-scale';
import type { DayFigure, TimingResult } from '../../../../core/round/timing/index.ts';
import { addDays, dateOfDay, dayNumber, SHORT_MONTHS } from '../../../../core/units/index.ts';
import { formatNumber } from '../../../format/index.ts';

/** One mark of an axis. */
export type AxisMark = { readonly at: number; readonly label: string };
/** A threshold with its height, px. */
export type Threshold = { readonly name: 'opens' | 'best' | 'closes'; readonly value: number; readonly y: number };

export type ChartLayout = {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** First day that is shown, and how many. */
  readonly first: string;
  readonly days: number;
  readonly toX: (date: string) => number;
  readonly toDate: (x: number) => string;
  readonly months: readonly AxisMark[];
  readonly levels: readonly AxisMark[];
  readonly thresholds: readonly Threshold[];
  /** SVG paths of what was measured (bridged days too), and of what is expected. */
  readonly measured: string;
  readonly expected: string;
  /** Where the window lies, px; null where there is none. */
  readonly window: { readonly from: number; readonly to: number } | null;
  /** The height of a day's figure; null where there is none, or where it lies outside. */
  readonly yOf: (figure: DayFigure | undefined) => number | null;
};

const MARGIN = { left: 56, right: 14, top: 26, bottom: 58 };
/** Days that are shown after the last date that matters, and at least in all. */
const AFTER_DAYS = 21;
const LEAST_DAYS = 75;
const SEASON_DAYS = 365;

/**
 * Where everything of the chart lies.
 *
 * @param dates what has to be in the picture beside the window: today, the working days
 * @param unit turns a figure into the unit that is shown, for the axis
 */
export function layoutChart(
  result: TimingResult,
  dates: readonly string[],
  width: number,
  height: number,
  unit: (figure: number) => number,
): ChartLayout {
  const box = {
    left: MARGIN.left,
    right: Math.max(width - MARGIN.right, MARGIN.left + 10),
    top: MARGIN.top,
    bottom: height - MARGIN.bottom,
  };
  const days = daysShown(result, dates);
  const firstDay = dayNumber(result.starts);
  const across = scaleLinear()
    .domain([0, days - 1])
    .range([box.left, box.right])
    .clamp(true);
  const shown = result.line.slice(0, days);
  const [low, high] = span(result, shown);
  const up = scaleLinear().domain([low, high]).range([box.bottom, box.top]);
  const toX = (date: string) => across(dayNumber(date) - firstDay);
  const yOf = (figure: DayFigure | undefined) => {
    if (figure?.value == null || figure.value > high || figure.value < low) return null;
    return up(figure.value);
  };
  return {
    width,
    height,
    ...box,
    first: result.starts,
    days,
    toX,
    toDate: (x) => dateOfDay(firstDay + Math.round(across.invert(x))),
    months: monthMarks(result.starts, days, toX),
    levels: levelMarks(low, high, unit, up),
    thresholds: thresholdsOf(result).map((each) => ({ ...each, y: up(each.value) })),
    measured: path(shown, (basis) => basis === 'measured' || basis === 'interpolated', across, yOf),
    expected: path(shown, (basis) => basis === 'curve', across, yOf),
    window: windowOf(result, toX, box.right),
    yOf,
  };
}

function daysShown(result: TimingResult, dates: readonly string[]): number {
  const { state, starts, ends } = result;
  const marks = [...dates];
  if (state.kind === 'window') {
    marks.push(state.opens.on);
    if (state.end.kind === 'day') marks.push(state.end.date.on);
  }
  const inside = marks.filter((date) => date >= starts && date <= ends);
  const last = inside.toSorted().at(-1) ?? starts;
  const wanted = dayNumber(addDays(last, AFTER_DAYS)) - dayNumber(starts) + 1;
  return Math.min(SEASON_DAYS, Math.max(LEAST_DAYS, wanted));
}

function thresholdsOf({ timing }: TimingResult): readonly Omit<Threshold, 'y'>[] {
  if (timing.kind === 'calendar') return [];
  const { opens, best, closes } =
    timing.kind === 'degree-days'
      ? { opens: timing.opensAt, best: timing.bestAt, closes: timing.closesAt }
      : { opens: timing.opensAtF, best: timing.bestAtF, closes: timing.closesAtF };
  return (
    [
      ['opens', opens],
      ['best', best],
      ['closes', closes],
    ] as const
  ).flatMap(([name, value]) => (value === undefined ? [] : [{ name, value }]));
}

/** Lowest and highest figure that is drawn. A count may run out of the picture above its closing. */
function span(result: TimingResult, shown: readonly DayFigure[]): readonly [number, number] {
  const limits = thresholdsOf(result).map((each) => each.value);
  const values = shown.flatMap((each) => (each.value === null ? [] : [each.value]));
  const all = [...limits, ...values];
  if (all.length === 0) return [0, 1];
  if (result.timing.kind === 'degree-days') {
    const top = Math.max(...limits, Math.min(Math.max(...all), 1.3 * Math.max(...limits)));
    return [0, Math.max(1, top)];
  }
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(2, 0.06 * (high - low));
  return [low - room, high + room];
}

function monthMarks(first: string, days: number, toX: (date: string) => number): readonly AxisMark[] {
  const marks: AxisMark[] = [];
  for (let index = 0; index < days; index += 1) {
    const date = addDays(first, index);
    if (date.endsWith('-01')) marks.push({ at: toX(date), label: SHORT_MONTHS[Number(date.slice(5, 7)) - 1] ?? '' });
  }
  return marks;
}

const LEVELS = 5;

function levelMarks(
  low: number,
  high: number,
  unit: (figure: number) => number,
  up: (figure: number) => number,
): readonly AxisMark[] {
  const shown = scaleLinear().domain([unit(low), unit(high)]);
  const back = scaleLinear()
    .domain([unit(low), unit(high)])
    .range([low, high]);
  return shown
    .ticks(LEVELS)
    .map((value) => ({ at: up(back(value)), label: formatNumber(value, Number.isInteger(value) ? 0 : 1) }));
}

/** A line through the days of one sort, joined to the day before each stretch, so that solid and dashed meet. */
function path(
  figures: readonly DayFigure[],
  belongs: (basis: DayFigure['basis']) => boolean,
  across: (index: number) => number,
  yOf: (figure: DayFigure | undefined) => number | null,
): string {
  const parts: string[] = [];
  let isDown = false;
  for (const [index, figure] of figures.entries()) {
    const y = belongs(figure.basis) ? yOf(figure) : null;
    if (y === null) {
      isDown = false;
      continue;
    }
    const before = isDown ? null : yOf(figures[index - 1]);
    if (before !== null) parts.push(`M${round(across(index - 1))} ${round(before)}`);
    parts.push(`${isDown || before !== null ? 'L' : 'M'}${round(across(index))} ${round(y)}`);
    isDown = true;
  }
  return parts.join('');
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function windowOf({ state }: TimingResult, toX: (date: string) => number, right: number): ChartLayout['window'] {
  if (state.kind !== 'window' || state.end.kind === 'unknown') return null;
  return { from: toX(state.opens.on), to: state.end.kind === 'day' ? toX(state.end.date.on) : right };
}

/** The date that a key leads to: null takes the cursor away, undefined is a key with another meaning. */
export function nextDate(key: string, at: string, first: string, last: string): string | null | undefined {
  const steps: Readonly<Record<string, number>> = {
    ArrowLeft: -1,
    ArrowDown: -1,
    ArrowRight: 1,
    ArrowUp: 1,
    PageDown: -7,
    PageUp: 7,
  };
  if (key === 'Escape') return null;
  if (key === 'Home') return first;
  if (key === 'End') return last;
  const step = steps[key];
  if (step === undefined) return undefined;
  const next = addDays(at, step);
  return next < first ? first : next > last ? last : next;
}
