import { describe, expect, test } from 'vitest';
import type { Property, Timing } from '../../../../core/book/index.ts';
import {
  type LawnDay,
  lawnsBySite,
  offsetOf,
  PUBLISHED_TIMINGS,
  seasonStart,
  timingSeason,
  timingWords,
} from '../../../../core/round/timing/index.ts';
import { bookWith, countTiming, soilTiming } from './stations.ts';

const US = { units: 'us', dates: 'month-first' } as const;

const spring: Timing = {
  id: 'c',
  name: 'Spring',
  source: '',
  kind: 'calendar',
  opens: '03-10',
  best: '03-25',
  closes: '04-15',
};

function lawn(id: string, changes: Partial<LawnDay> & { sites?: Property['sites'] } = {}): LawnDay {
  const { sites, ...rest } = changes;
  const property: Property = {
    id,
    name: id,
    address: '',
    parking: [-84, 40],
    noTrailer: false,
    gates: [],
    zones: [],
    exclusions: [],
    cautions: [],
    note: '',
    ...(sites === undefined ? {} : { sites }),
  };
  return { property, plannedOn: null, doneOn: null, ...rest };
}

describe('seasons', () => {
  test('a calendar window may lie over the turn of the year', () => {
    const winter: Timing = { ...spring, opens: '11-20', best: '12-31', closes: '02-29' };
    const { state, starts } = timingSeason({ temperatures: [] }, winter, '2027-01-10').at(0);
    expect(starts).toBe('2026-11-20');
    expect(state).toEqual({
      kind: 'window',
      opens: { on: '2026-11-20', basis: 'calendar' },
      best: { on: '2026-12-31', basis: 'calendar' },
      end: { kind: 'day', date: { on: '2027-02-28', basis: 'calendar' } },
    });
    expect(timingSeason({ temperatures: [] }, winter, '2028-01-10').at(0).state).toMatchObject({
      end: { date: { on: '2028-02-29' } },
    });
  });

  test.each([
    ['2027-02-10', '2027-03-10'],
    ['2027-02-07', '2026-03-10'],
    ['2027-12-31', '2027-03-10'],
  ])('a round that begins on %s belongs to the season from %s', (reference, starts) =>
    expect(seasonStart(spring, reference)).toBe(starts),
  );
});

describe('lawns against their window', () => {
  const season = timingSeason({ temperatures: [] }, spring, '2027-03-15');
  const verdict = (changes: Partial<LawnDay>, today: string, lastWorkday: string | null) =>
    lawnsBySite(season, undefined, [lawn('a', changes)], today, lastWorkday)[0]?.lawns[0]?.verdict;

  test.each([
    ['planned inside', { plannedOn: '2027-04-15' }, '2027-03-01', '2027-04-20', 'in-time'],
    ['planned a day after the last one', { plannedOn: '2027-04-16' }, '2027-03-01', '2027-04-20', 'too-late'],
    ['planned before it opens', { plannedOn: '2027-03-09' }, '2027-03-01', '2027-04-20', 'too-early'],
    ['nothing planned, and the round ends before it opens', {}, '2027-03-01', '2027-03-09', 'too-early'],
    ['the last day is today', {}, '2027-04-15', '2027-04-15', 'in-time'],
    ['the last day was yesterday', { plannedOn: '2027-04-20' }, '2027-04-16', '2027-04-20', 'over'],
    ['nothing planned, and the round ends later', {}, '2027-03-01', '2027-04-16', 'at-risk'],
    ['nothing planned, and the round ends in time', {}, '2027-03-01', '2027-04-15', 'in-time'],
    ['done already', { doneOn: '2027-04-01' }, '2027-05-01', '2027-04-20', 'done'],
  ] as const)('%s', (_, changes, today, lastWorkday, expected) =>
    expect(verdict(changes, today, lastWorkday)).toBe(expected),
  );
});

describe('kinds of site', () => {
  const book = bookWith('2027-01-01', '2027-12-31', () => [60, 50, null]);
  const offsets = { 'paved-edge': 5, shade: -2 };

  test('offsets of several kinds add up; one that is not set adds nothing and is named', () => {
    expect(offsetOf(offsets, ['paved-edge', 'shade'])).toBe(3);
    expect(offsetOf(undefined, ['shade'])).toBe(0);
    const lawns = [
      lawn('a', { sites: ['shade'] }),
      lawn('b'),
      lawn('c', { sites: ['south-slope', 'paved-edge'] }),
      lawn('d'),
    ];
    const groups = lawnsBySite(timingSeason(book, countTiming(), '2027-03-15'), offsets, lawns, '2027-03-01', null);
    expect(groups.map((group) => [group.sites, group.unset, group.result.offsetF, group.lawns.length])).toEqual([
      [['paved-edge', 'south-slope'], ['south-slope'], 5, 1],
      [[], [], 0, 2],
      [['shade'], [], -2, 1],
    ]);
  });

  test('the calendar knows no sites', () => {
    const groups = lawnsBySite(
      timingSeason(book, spring, '2027-03-15'),
      offsets,
      [lawn('a', { sites: ['shade'] }), lawn('b')],
      '2027-03-01',
      null,
    );
    expect(groups.map((group) => [group.sites, group.result.offsetF, group.lawns.length])).toEqual([[[], 0, 2]]);
  });

  test('the site that closes first stands first: the warm one in spring, the cool one in fall', () => {
    const first = Date.UTC(2027, 7, 1);
    const falling = bookWith('2027-07-01', '2028-07-31', (date) => [
      null,
      null,
      80 - (Date.parse(`${date}T00:00:00Z`) - first) / 86_400_000 / 2,
    ]);
    const timing = soilTiming({ course: 'falling', from: '08-01', closesAtF: 56 });
    const lawns = [lawn('a', { sites: ['paved-edge'] }), lawn('b'), lawn('c', { sites: ['shade'] })];
    const order = (season: ReturnType<typeof timingSeason>) =>
      lawnsBySite(season, offsets, lawns, '2027-03-01', null).map((group) => group.result.offsetF);
    expect(order(timingSeason(falling, timing, '2027-08-20'))).toEqual([-2, 0, 5]);
    expect(order(timingSeason(book, countTiming(), '2027-03-15'))).toEqual([5, 0, -2]);
  });

  test('the warm lawn misses what the others still have', () => {
    // Ten a day on the paved edge: 200 on 20 March. Five a day at the station: 200 on 9 April.
    const lawns = [lawn('warm', { sites: ['paved-edge'] }), lawn('plain')];
    const season = timingSeason(book, countTiming(), '2027-03-15');
    const verdicts = (today: string) =>
      lawnsBySite(season, offsets, lawns, today, '2027-04-08').map((group) => group.lawns[0]?.verdict);
    expect(verdicts('2027-03-25')).toEqual(['over', 'in-time']);
    expect(verdicts('2027-03-01')).toEqual(['at-risk', 'in-time']);
  });

  test('a lawn is never missed where no temperature is known', () => {
    const groups = lawnsBySite(
      timingSeason({ temperatures: [] }, countTiming(), '2027-03-15'),
      offsets,
      [lawn('a')],
      '2027-03-01',
      '2027-04-01',
    );
    expect(groups[0]?.lawns[0]?.verdict).toBe('unknown');
  });
});

describe('words', () => {
  test('a count says its base, first day, thresholds and source', () => {
    const timing = countTiming({ baseF: 32, from: '02-15', opensAt: 250, closesAt: 500, source: 'K. Frank' });
    expect(timingWords(timing, US).join(' ')).toBe(
      'Degree days of the air above a base of 32 °F, (highest + lowest) / 2 of each day, counted from February 15. Opens at 250 °F days, closes at 500 °F days. Source: K. Frank.',
    );
    // 250 and 500 divided by 1.8.
    const elsewhere = timingWords(timing, { units: 'metric', dates: 'day-first' }).join(' ');
    expect(elsewhere).toContain('Opens at 138.9 °C days, closes at 277.8 °C days.');
    expect(elsewhere).toContain('counted from 15 February.');
  });

  test('soil says its depth, its mean, its course and how long it has to hold', () => {
    const timing = soilTiming({ depthIn: 4, meanOfDays: 5, forDays: 3, opensAtF: 50, closesAtF: 55 });
    expect(timingWords(timing, US).slice(0, 2)).toEqual([
      'Soil at 4 in, averaged over 5 days that end with the day itself, rising, looked for from February 1.',
      'Opens at 50 °F or above, closes at 55 °F or above. Each threshold has to hold for 3 days in a row.',
    ]);
    expect(timingWords(soilTiming({ course: 'falling', closesAtF: 56, source: '' }), US).slice(1)).toEqual([
      'Open from February 1 on, closes below 56 °F.',
      'Source: none given.',
    ]);
  });

  test('the thresholds of every published figure stand in the words of its source', () => {
    for (const { id, source, figures } of PUBLISHED_TIMINGS) {
      const { kind, course: _, from, ...numbers } = figures as Readonly<Record<string, unknown>>;
      for (const [member, figure] of Object.entries(numbers)) {
        // Of the germination round 15 April the first of the seven days before is put in.
        if (id === 'mid-atlantic-calendar' || member === 'meanOfDays') continue;
        const text = member === 'closes' ? '15 April' : String(figure);
        expect(source, `${id}, ${kind} ${member}`).toContain(text);
      }
      if (from !== undefined) expect(source).toContain('15 February');
    }
  });

  test('every published figure names its source, and only one of them is common practice', () => {
    expect(PUBLISHED_TIMINGS.filter((each) => !/\d{4}|n\.d\./.test(each.source)).map((each) => each.id)).toEqual([
      'seeding-soil',
    ]);
    expect(new Set(PUBLISHED_TIMINGS.map((each) => each.id)).size).toBe(PUBLISHED_TIMINGS.length);
  });
});
