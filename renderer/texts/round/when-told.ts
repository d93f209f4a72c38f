import { counted } from '../../format/index.ts';

/** What is told of the window of a timing, of what it stands on, and of lawns that miss it. Dates and figures come in words. */
export const whenToldWords = {
  none: '–',
  notKnown: 'not known',
  basis: { measured: 'measured', mixed: 'partly measured', expected: 'expected', calendar: 'by the calendar' },
  figureBasis: { measured: 'measured', interpolated: 'bridged', curve: 'expected', none: 'not known' },
  withBasis: (what: string, basis: string): string => `${what}, ${basis}`,
  window: {
    notThisYear: 'not this year',
    passedInOneDay: 'not this year: passed in one day',
    noTemperatures: 'no temperatures yet',
    notKnownFrom: (date: string): string => `not known from ${date} on`,
    openOn: 'open until further notice',
  },
  today: {
    notReached: 'Not this year: the opening is not reached.',
    passedInOneDay: 'Not this year: opening and closing are reached on the same day.',
    noTemperatures: 'No temperatures yet: read them from a file or type them below.',
    notKnown: (date: string): string =>
      `Not known: there is no temperature for ${date}, and no earlier year to stand in for it.`,
    opens: (date: string, basis: string): string => `Opens ${date} (${basis}).`,
    over: (date: string): string => `Over: the last useful day was ${date}.`,
    openUntil: (date: string, basis: string): string => `Open now, until ${date} (${basis}).`,
    openOn: 'Open until further notice.',
    lastNotKnown: 'Open now; the last useful day is not known.',
  },
  footing: {
    nothingMeasured: (station: string): string => `${station}: nothing measured in this season yet.`,
    measuredTo: (station: string, date: string): string => `${station}: measured up to ${date}.`,
    measuredBeyond: (station: string, date: string): string =>
      `${station}: measured up to ${date}; what comes after today counts as measured too.`,
    noEarlierYear: 'There is no earlier year, so nothing can be said of the days ahead.',
    yearsFromTo: (from: string, to: string): string => `${from} to ${to}`,
    curve: (years: number, named: string, smoothDays: number): string =>
      `Days ahead are the normal curve of ${counted(years, 'earlier year')} (${named}): the mean of the years for each day, then over ${smoothDays} days on each side.`,
    layOn: 'lay on',
    wereBelow: (difference: string): string => `were ${difference} below`,
    wereAbove: (difference: string): string => `were ${difference} above`,
    notShifted: (curve: string, lay: string): string =>
      `${curve} It is not shifted to meet the measured days, which lately ${lay} it.`,
    bridged: 'bridged by a straight line',
    fromCurve: 'not measured, the normal curve stands in',
    without: 'without any figure',
    fromTo: (from: string, to: string): string => `${from} to ${to}`,
    moreSpans: (count: number): string => `and ${count} more spans`,
    days: (days: number, what: string, named: string): string => `${counted(days, 'day')} ${what}: ${named}.`,
  },
  misses: {
    roundBeforeOpening: (opens: string): string => `the last working day of the round comes before it opens, ${opens}`,
    plannedBefore: (date: string, opens: string): string => `planned on ${date}, before it opens, ${opens}`,
    past: (last: string): string => `the last useful day, ${last}, is past`,
    plannedAfter: (date: string, last: string): string => `planned on ${date}, after the last useful day, ${last}`,
    atRisk: (last: string): string => `no day yet, and the round goes on after the last useful day, ${last}`,
    never: 'there is no useful day this year',
  },
} as const;
