import type { Timing } from '../../book/index.ts';
import {
  formatDegreeDays,
  formatMonthDay,
  formatTemperature,
  formatTemperatureDifference,
  formatWidth,
  type Reading,
  type UnitSystem,
} from '../../units/index.ts';
import type { Site, TimingResult } from './types.ts';

/** The units of temperatures and depths, and the order in which days are written. */
type TimingReading = Pick<Reading, 'units' | 'dates'>;

/**
 * What a timing asks for in sentences: base or depth, first day, thresholds and source, so that no date stands without the figures that
 * it comes from.
 */
export function timingWords(timing: Timing, reading: TimingReading): readonly string[] {
  const source = timing.source === '' ? 'Source: none given.' : `Source: ${timing.source.replace(/\.$/, '')}.`;
  return [...ruleWords(timing, reading), source];
}

function ruleWords(timing: Timing, { units: system, dates }: TimingReading): readonly string[] {
  const dayOfYear = (monthDay: string) => formatMonthDay(monthDay, dates);
  const degrees = (valueF: number) => formatTemperature(valueF, system);
  if (timing.kind === 'calendar') {
    const best = timing.best === undefined ? '' : `, best on ${dayOfYear(timing.best)}`;
    return [
      `By the calendar: opens on ${dayOfYear(timing.opens)}${best}, last useful day ${dayOfYear(timing.closes)}.`,
    ];
  }
  if (timing.kind === 'degree-days') {
    const count = (value: number) => formatDegreeDays(value, system);
    const best = timing.bestAt === undefined ? '' : `, best at ${count(timing.bestAt)}`;
    return [
      `Degree days of the air above a base of ${degrees(timing.baseF)}, (highest + lowest) / 2 of each day, counted from ${dayOfYear(timing.from)}.`,
      `Opens at ${count(timing.opensAt)}${best}, closes at ${count(timing.closesAt)}.`,
    ];
  }
  const isRising = timing.course === 'rising';
  const mean =
    timing.meanOfDays === 1
      ? 'mean of the day'
      : `averaged over ${timing.meanOfDays} days that end with the day itself`;
  const held = timing.forDays === 1 ? '' : ` Each threshold has to hold for ${timing.forDays} days in a row.`;
  const opens =
    timing.opensAtF === undefined
      ? `Open from ${dayOfYear(timing.from)} on`
      : `Opens at ${degrees(timing.opensAtF)} or ${isRising ? 'above' : 'below'}`;
  const best = timing.bestAtF === undefined ? '' : `, best at ${degrees(timing.bestAtF)}`;
  const closes = isRising
    ? `closes at ${degrees(timing.closesAtF)} or above`
    : `closes below ${degrees(timing.closesAtF)}`;
  return [
    `Soil at ${formatWidth(timing.depthIn, system)}, ${mean}, ${timing.course}, looked for from ${dayOfYear(timing.from)}.`,
    `${opens}${best}, ${closes}.${held}`,
  ];
}

const SITE_WORDS: Readonly<Record<Site, string>> = {
  'paved-edge': 'paved edge',
  'south-slope': 'south slope',
  shade: 'shade',
};

/** "paved edge and south slope", "as the station" for none. */
export function siteWords(sites: readonly Site[]): string {
  return sites.length === 0 ? 'as the station' : sites.map((site) => SITE_WORDS[site]).join(' and ');
}

/** "paved edge and south slope, +7 °F": a kind of site with what it adds; "every lawn" by the calendar. */
export function siteOffsetWords(sites: readonly Site[], { timing, offsetF }: TimingResult, system: UnitSystem): string {
  if (timing.kind === 'calendar') return 'every lawn';
  return sites.length === 0 ? siteWords(sites) : `${siteWords(sites)}, ${formatTemperatureDifference(offsetF, system)}`;
}
