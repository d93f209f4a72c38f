import { type Book, type Property, type Round, SITES } from '../../book/index.ts';
import { offsetOf } from './lawns.ts';
import type { TimingState } from './types.ts';
import { timingSeason } from './window.ts';

/** The days on which a round is of use to one lawn. YYYY-MM-DD */
export type LawnWindow = {
  /** First day; null where it is not known, as temperatures are missing. */
  readonly opensOn: string | null;
  /** Last useful day; null where there is none or it is not known. */
  readonly lastOn: string | null;
  /** True where the opening is never reached this season, or the closing on the same day. */
  readonly isNever: boolean;
};

type Timed = Pick<Round, 'timingId' | 'dates'>;

/** The windows of lawns by the timing of a round, each at its own site; null for a round without a timing. */
export function lawnWindows(
  book: Book,
  { timingId, dates }: Timed,
): ((property: Pick<Property, 'sites'>) => LawnWindow) | null {
  const timing = book.timings.find((each) => each.id === timingId);
  const [first] = dates;
  if (timing === undefined || first === undefined) return null;
  const season = timingSeason(book, timing, first);
  const known = new Map<number, LawnWindow>();
  return ({ sites }) => {
    const own = timing.kind === 'calendar' ? [] : SITES.filter((site) => sites?.includes(site) === true);
    const offsetF = offsetOf(book.siteOffsets, own);
    const window = known.get(offsetF) ?? windowOf(season.at(offsetF).state);
    known.set(offsetF, window);
    return window;
  };
}

function windowOf(state: TimingState): LawnWindow {
  if (state.kind === 'not-this-year') return { opensOn: null, lastOn: null, isNever: true };
  if (state.kind === 'unknown') return { opensOn: null, lastOn: null, isNever: false };
  return { opensOn: state.opens.on, lastOn: state.end.kind === 'day' ? state.end.date.on : null, isNever: false };
}

/**
 * The last day on which work on a lawn is not late: the day on which the round is due or the last useful one of the lawn's window, whichever
 * comes first; null where neither is.
 */
export function lastInTime(
  book: Book,
  round: Timed & Pick<Round, 'dueDate'>,
): (property: Pick<Property, 'sites'>) => string | null {
  const windows = lawnWindows(book, round);
  const due = round.dueDate ?? null;
  return (property) => {
    const last = windows?.(property).lastOn ?? null;
    if (due === null || last === null) return due ?? last;
    return [due, last].toSorted()[0] ?? null;
  };
}
