import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { DayFigure, TimingResult } from '../../../../core/round/timing/index.ts';
import { addDays, celsius, daysBetween } from '../../../../core/units/index.ts';
import type { Formatter } from '../../../format/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { type ChartLayout, layoutChart, nextDate, type Threshold } from './chart-layout.ts';
import { figureWords } from './when-words.ts';

const HEIGHT_PX = 290;
const CALENDAR_HEIGHT_PX = 130;

type ChartProps = {
  readonly result: TimingResult;
  readonly siteWords: string;
  readonly words: Formatter;
  readonly today: string;
  /** Working days of the round, in order. */
  readonly workdays: readonly string[];
  /** How many lawns of this kind of site are planned on each day. */
  readonly planned: ReadonlyMap<string, number>;
  readonly cursor: string | null;
  readonly onCursor: (date: string | null) => void;
};

/**
 * The season as a picture: what was measured solid, what is expected dashed, thresholds across, the window hatched, working days below. The
 * cursor follows the pointer; from the keyboard the arrow keys step from day to day.
 */
export function TimingChart(props: ChartProps) {
  const { result, siteWords, words, today, workdays, planned, cursor, onCursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(900);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const height = result.timing.kind === 'calendar' ? CALENDAR_HEIGHT_PX : HEIGHT_PX;
  const layout = useMemo(() => {
    const unit = unitOf(result, words);
    return layoutChart(result, [today, ...workdays], width, height, unit);
  }, [result, today, workdays, width, height, words]);
  const last = addDays(layout.first, layout.days - 1);
  const inside = (date: string) => (date < layout.first ? layout.first : date > last ? last : date);
  const at = inside(cursor ?? today);
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left;
    onCursor(x < layout.left ? null : layout.toDate(x));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const next = nextDate(event.key, at, layout.first, last);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    onCursor(next);
  };
  return (
    <div
      ref={box}
      className="when-chart"
      role="slider"
      tabIndex={0}
      aria-label={whenWords.chart.chartLabel(result.timing.name, siteWords)}
      aria-valuemin={0}
      aria-valuemax={layout.days - 1}
      aria-valuenow={daysBetween(layout.first, at)}
      aria-valuetext={momentWords(result, at, { workdays, planned }, words)}
      onPointerMove={onPointerMove}
      onPointerDown={onPointerMove}
      onPointerLeave={() => onCursor(null)}
      onKeyDown={onKeyDown}
    >
      <Drawing {...props} layout={layout} cursor={cursor === null ? null : inside(cursor)} />
    </div>
  );
}

/** From F, or degree days F, to what is shown. */
function unitOf({ timing }: TimingResult, { system }: Formatter): (figure: number) => number {
  if (system === 'us') return (figure) => figure;
  return timing.kind === 'degree-days' ? (figure) => (figure * 5) / 9 : celsius;
}

/** One day in words: its figure, whether the window is open, whether it is worked. */
export function momentWords(
  result: TimingResult,
  date: string,
  { workdays, planned }: Pick<ChartProps, 'workdays' | 'planned'>,
  words: Formatter,
): string {
  const parts = [words.longDate(date)];
  if (result.timing.kind !== 'calendar') {
    parts.push(figureWords(result, result.line[daysBetween(result.starts, date)], words));
  }
  parts.push(isOpen(result, date) ? 'open' : whenWords.chart.notOpen);
  const lawns = planned.get(date) ?? 0;
  if (lawns > 0) parts.push(whenWords.chart.planned(lawns));
  else if (workdays.includes(date)) parts.push(whenWords.chart.workingDayRound);
  return parts.join(', ');
}

/** Whether a day lies in the window. */
export function isOpen({ state }: TimingResult, date: string): boolean {
  if (state.kind !== 'window' || date < state.opens.on) return false;
  if (state.end.kind === 'unknown') return date < state.end.firstWithout;
  return state.end.kind === 'open' || date <= state.end.date.on;
}

type DrawingProps = Omit<ChartProps, 'onCursor' | 'siteWords'> & { readonly layout: ChartLayout };

function Drawing({ layout, result, words, today, workdays, planned, cursor }: DrawingProps) {
  const { width, height, left, right, top, bottom } = layout;
  const figureAt = (date: string): DayFigure | undefined => result.line[daysBetween(result.starts, date)];
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <defs>
        <pattern id="when-window" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="when-hatch" d="M0 0V7" />
        </pattern>
        <clipPath id="when-clip">
          <rect x={left} y={top - 2} width={right - left} height={bottom - top + 4} />
        </clipPath>
      </defs>
      <g className="when-axis">
        {layout.levels.map(({ at, label }) =>
          result.line.length === 0 ? null : (
            <g key={label}>
              <path d={`M${left} ${at}H${right}`} />
              <text x={left - 8} y={at + 4} textAnchor="end">
                {label}
              </text>
            </g>
          ),
        )}
        {layout.months.map(({ at, label }) => (
          <g key={`${label} ${at}`}>
            <path d={`M${at} ${top}V${bottom + 5}`} />
            <text x={at + 4} y={bottom + 30}>
              {label}
            </text>
          </g>
        ))}
        <path className="when-floor" d={`M${left} ${bottom}H${right}`} />
        {result.line.length > 0 && (
          <text x={left - 8} y={14} textAnchor="end">
            °{words.system === 'us' ? whenWords.chart.fahrenheit : whenWords.chart.celsius}
            {result.timing.kind === 'degree-days' ? whenWords.chart.days : ''}
          </text>
        )}
      </g>
      {layout.window !== null && <WindowBand layout={layout} result={result} words={words} />}
      <Thresholds layout={layout} result={result} words={words} />
      <g clipPath="url(#when-clip)">
        <path className="when-line" d={layout.measured} />
        <path className="when-line when-line-expected" d={layout.expected} />
      </g>
      <g className="when-workdays">
        {[...new Set([...workdays, ...planned.keys()])]
          .filter((date) => date >= layout.first && daysBetween(layout.first, date) < layout.days)
          .map((date) => (
            <path
              key={date}
              className={planned.has(date) ? 'when-planned' : undefined}
              d={`M${layout.toX(date)} ${bottom + 7}l4 8h-8z`}
            >
              <title>{words.longDate(date)}</title>
            </path>
          ))}
      </g>
      <Mark layout={layout} date={today} label={whenWords.chart.today} className="when-today" />
      {cursor !== null && (
        <CursorMark layout={layout} date={cursor} figure={figureAt(cursor)} result={result} words={words} />
      )}
    </svg>
  );
}

type PartProps = Pick<DrawingProps, 'layout' | 'result' | 'words'>;

/** The window: hatched, with its ends named above. */
function WindowBand({ layout, result: { state }, words }: PartProps) {
  const { window, top, bottom, right } = layout;
  if (window === null || state.kind !== 'window') return null;
  const width = Math.max(2, window.to - window.from);
  const end = state.end.kind === 'day' ? words.date(state.end.date.on).slice(4) : whenWords.chart.furtherNotice;
  const best = state.best === null ? null : layout.toX(state.best.on);
  const bestWords = state.best === null ? '' : whenWords.chart.bestOn(words.date(state.best.on).slice(4));
  const label = whenWords.chart.openSpan(words.date(state.opens.on).slice(4), end, bestWords);
  const isNarrow = window.from + LABEL_PX > right;
  return (
    <g className="when-window">
      <rect x={window.from} y={top} width={width} height={bottom - top} />
      <path d={`M${window.from} ${top - 6}V${bottom}M${window.from + width} ${top - 6}V${bottom}`} />
      {best !== null && <path className="when-best" d={`M${best} ${top}V${bottom}`} />}
      <text x={isNarrow ? right : window.from} y={top - 10} textAnchor={isNarrow ? 'end' : 'start'}>
        {label}
      </text>
    </g>
  );
}

const LABEL_PX = 240;
const THRESHOLD_WORDS: Readonly<Record<Threshold['name'], string>> = { opens: 'opens', best: 'best', closes: 'closes' };

function Thresholds({ layout, result, words }: PartProps) {
  const { timing } = result;
  const format = timing.kind === 'degree-days' ? words.degreeDays : words.temperature;
  // Falling soil begins high, where the names would lie on its line.
  const isLeft = !(timing.kind === 'soil-temperature' && timing.course === 'falling');
  return (
    <g className="when-thresholds">
      {layout.thresholds.map(({ name, value, y }) => (
        <g key={name}>
          <path d={`M${layout.left} ${y}H${layout.right}`} />
          <text x={isLeft ? layout.left + 6 : layout.right - 6} y={y - 4} textAnchor={isLeft ? 'start' : 'end'}>
            {THRESHOLD_WORDS[name]} {format(value)}
          </text>
        </g>
      ))}
    </g>
  );
}

type MarkProps = {
  readonly layout: ChartLayout;
  readonly date: string;
  readonly label: string;
  readonly className: string;
};

function Mark({ layout, date, label, className }: MarkProps) {
  if (date < layout.first || daysBetween(layout.first, date) >= layout.days) return null;
  const x = layout.toX(date);
  const isLate = x > layout.right - 50;
  return (
    <g className={className}>
      <path d={`M${x} ${layout.top}V${layout.bottom + 5}`} />
      <text x={isLate ? x - 4 : x + 4} y={layout.top + 12} textAnchor={isLate ? 'end' : 'start'}>
        {label}
      </text>
    </g>
  );
}

type CursorProps = PartProps & { readonly date: string; readonly figure: DayFigure | undefined };

function CursorMark({ layout, date, figure, result, words }: CursorProps) {
  const x = layout.toX(date);
  const y = layout.yOf(figure);
  const isLate = x > layout.right - LABEL_PX;
  const middle = Math.min(Math.max(x, layout.left + 36), layout.right - 36);
  return (
    <g className="when-cursor">
      <path d={`M${x} ${layout.top}V${layout.bottom + 38}`} />
      <rect x={middle - 38} y={layout.bottom + 36} width="76" height="17" rx="2" />
      <text x={middle} y={layout.bottom + 49} textAnchor="middle" className="when-cursor-date">
        {words.date(date)}
      </text>
      {y !== null && <circle cx={x} cy={y} r="3.4" />}
      {y !== null && (
        <text x={isLate ? x - 8 : x + 8} y={Math.max(layout.top + 12, y - 7)} textAnchor={isLate ? 'end' : 'start'}>
          {figureWords(result, figure, words)}
        </text>
      )}
    </g>
  );
}
