import { type Book, type Property, SITES } from '../../book/index.ts';
import type { Site, TimingResult } from './types.ts';
import type { TimingSeason } from './window.ts';

/** A lawn of the round: the last day that is planned or promised for it, and the day on which it was done. */
export type LawnDay = {
  readonly property: Property;
  readonly plannedOn: string | null;
  readonly doneOn: string | null;
};

/**
 * How a lawn stands to its window. 'done' before today; 'in-time'; 'too-early': planned before it opens, or
 * nothing is planned and the round has no working day from then on; 'too-late': planned after the
 * last useful day; 'over': the last useful day is past and nothing was done; 'at-risk': nothing is planned, and the round's last
 * working day comes after the last useful one; 'never': no window this year; 'unknown': temperatures are missing.
 */
export type LawnVerdict = 'done' | 'in-time' | 'too-early' | 'too-late' | 'over' | 'at-risk' | 'never' | 'unknown';

/** Verdicts of lawns that get nothing while it is of use. */
export const MISSED: readonly LawnVerdict[] = ['over', 'too-late', 'at-risk', 'never'];

/** A lawn and how it stands to its window. */
export type LawnTiming = LawnDay & { readonly verdict: LawnVerdict };

/** Lawns of one kind of site, which share their window. */
export type SiteGroup = {
  readonly sites: readonly Site[];
  /** Kinds of site for which the user has set no offset; nothing is added for them. */
  readonly unset: readonly Site[];
  readonly result: TimingResult;
  readonly lawns: readonly LawnTiming[];
};

/** What the sites of a lawn add to a station's temperature, F: the sum of the user's offsets. */
export function offsetOf(siteOffsets: Book['siteOffsets'], sites: readonly Site[]): number {
  return sites.reduce((sum, site) => sum + (siteOffsets?.[site] ?? 0), 0);
}

/**
 * The lawns of a round by kind of site, the one that closes first at the head, each lawn held against the window of its own site. The calendar knows no sites:
 * by it all lawns are of one kind.
 *
 * @param today YYYY-MM-DD
 * @param lastWorkday the round's last working day; null where nothing is known of it
 */
export function lawnsBySite(
  season: TimingSeason,
  siteOffsets: Book['siteOffsets'],
  lawns: readonly LawnDay[],
  today: string,
  lastWorkday: string | null,
): readonly SiteGroup[] {
  const sitesFor = season.timing.kind === 'calendar' ? () => [] : sitesOf;
  const byKey = new Map<string, LawnDay[]>();
  for (const lawn of lawns) {
    const key = sitesFor(lawn.property).join(' ');
    const members = byKey.get(key);
    if (members === undefined) byKey.set(key, [lawn]);
    else members.push(lawn);
  }
  const groups = [...byKey.values()].map((members): SiteGroup => {
    const sites = members[0] === undefined ? [] : sitesFor(members[0].property);
    const result = season.at(offsetOf(siteOffsets, sites));
    return {
      sites,
      unset: sites.filter((site) => siteOffsets?.[site] === undefined),
      result,
      lawns: members.map((lawn) => ({ ...lawn, verdict: verdictOf(result, lawn, today, lastWorkday) })),
    };
  });
  return groups.toSorted((left, right) => {
    const [one, other] = [lastDay(left.result), lastDay(right.result)];
    return one === other ? right.result.offsetF - left.result.offsetF : one < other ? -1 : 1;
  });
}

/** For the order of windows: what is never open is first, what has no end last. */
function lastDay({ state }: TimingResult): string {
  if (state.kind === 'not-this-year') return '';
  return state.kind === 'window' && state.end.kind === 'day' ? state.end.date.on : '9999';
}

function sitesOf({ sites }: Property): readonly Site[] {
  return SITES.filter((site) => sites?.includes(site) === true);
}

/** Holds one lawn against its window. */
export function verdictOf(
  { state }: TimingResult,
  { plannedOn, doneOn }: LawnDay,
  today: string,
  lastWorkday: string | null,
): LawnVerdict {
  if (doneOn !== null) return 'done';
  if (state.kind === 'not-this-year') return 'never';
  if (state.kind === 'unknown') return 'unknown';
  const last = state.end.kind === 'day' ? state.end.date.on : null;
  if (last !== null && last < today) return 'over';
  if ((plannedOn ?? lastWorkday ?? state.opens.on) < state.opens.on) return 'too-early';
  if (last === null) return state.end.kind === 'open' ? 'in-time' : 'unknown';
  if (plannedOn !== null) return plannedOn > last ? 'too-late' : 'in-time';
  return lastWorkday !== null && lastWorkday > last ? 'at-risk' : 'in-time';
}
