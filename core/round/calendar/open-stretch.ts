import type { Calendar, Rig } from '../../book/index.ts';
import { shiftOnClock } from './clock.ts';
import { closedWords, shiftHours, type WeatherLimit, type WeatherTable } from './weather.ts';

/** The longest row of open hours of a day. Minutes after midnight, counted as plans count them: real ones from the start of a shift. */
export type OpenStretch = {
  /** Absent: open when the first shift starts. */
  readonly fromMin?: number;
  /** Absent: open when the last one ends. */
  readonly toMin?: number;
  /** What is closed, and why. */
  readonly words: string;
  /** Whether it is one of several. */
  readonly isOneOfSeveral: boolean;
};

type Span = { readonly fromMin: number; readonly toMin: number };

/**
 * The longest stretch that limits leave open between the first start of a shift and the last end of one, overtime counted; of two as long
 * the earlier one. Null where no hour is closed.
 */
export function openStretch(
  limits: readonly WeatherLimit[],
  table: WeatherTable,
  date: string,
  rigs: readonly Rig[],
  rule: Calendar['clockChange'],
): OpenStretch | null {
  const closed: Span[] = [];
  let words = '';
  for (const { shiftStartMin, shiftMin, overtimeMin } of rigs) {
    const hours = shiftHours(limits, table, shiftOnClock(date, shiftStartMin, shiftMin + overtimeMin, rule));
    let at = shiftStartMin;
    for (const { fromMin, toMin, why } of hours) {
      const end = at + toMin - fromMin;
      if (why !== '') closed.push({ fromMin: at, toMin: end });
      at = end;
    }
    if (words === '') words = closedWords(hours);
  }
  if (closed.length === 0) return null;
  const first = Math.min(...rigs.map((each) => each.shiftStartMin));
  const last = Math.max(...rigs.map((each) => each.shiftStartMin + each.shiftMin + each.overtimeMin));
  const open = openBetween(closed, { fromMin: first, toMin: last });
  const [longest] = open.toSorted((one, other) => other.toMin - other.fromMin - (one.toMin - one.fromMin));
  if (longest === undefined) return { fromMin: first, toMin: first, words, isOneOfSeveral: false };
  return {
    ...(longest.fromMin > first ? { fromMin: longest.fromMin } : {}),
    ...(longest.toMin < last ? { toMin: longest.toMin } : {}),
    words,
    isOneOfSeveral: open.length > 1,
  };
}

/** What is left of a span between closed ones, in order. */
function openBetween(closed: readonly Span[], whole: Span): readonly Span[] {
  const open: Span[] = [];
  let from = whole.fromMin;
  for (const each of closed.toSorted((one, other) => one.fromMin - other.fromMin)) {
    if (each.fromMin > from) open.push({ fromMin: from, toMin: each.fromMin });
    from = Math.max(from, each.toMin);
  }
  if (from < whole.toMin) open.push({ fromMin: from, toMin: whole.toMin });
  return open;
}
