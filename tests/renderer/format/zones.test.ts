import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { readingOf } from '../../../core/book/index.ts';
import { localTime } from '../../../core/formats/export/plan/local-time.ts';
import type { PlanSource } from '../../../core/formats/index.ts';
import { addDays, daysBetween, formatDate } from '../../../core/units/index.ts';
import { formatterFor, todayHere } from '../../../renderer/format/index.ts';
import { smallSource, written } from '../../core/formats/export/plan/sources.ts';
import { everySheet, fixtureBook } from '../../core/reports/fixture.ts';

// Zones with their days of 23 and of 25 hours in 2027. New York: second Sunday of March and first of November (15 U.S.C. 260a).
// The others as in the IANA time zone database; in Santiago the hour from midnight to one is left out, in Kolkata and Phoenix none.
const ZONES: readonly (readonly [zone: string, short: string | null, long: string | null])[] = [
  ['America/New_York', '2027-03-14', '2027-11-07'],
  ['Pacific/Auckland', '2027-09-26', '2027-04-04'],
  ['America/Santiago', '2027-09-05', '2027-04-03'],
  ['Asia/Kolkata', null, null],
  ['America/Phoenix', null, null],
];
const CHANGES = ZONES.flatMap(([, short, long]) => [short, long]).filter((date) => date !== null);
const HALF_HOUR_MS = 1_800_000;

const before = process.env.TZ;
afterAll(() => {
  if (before === undefined) delete process.env.TZ;
  else process.env.TZ = before;
});

/** Half hours of a date on this machine's clock, found by asking its calendar from a day before to a day after. */
function halfHoursOf(date: string): readonly Date[] {
  const noon = Date.parse(`${date}T12:00:00Z`);
  return Array.from({ length: 144 }, (_, step) => new Date(noon + (step - 72) * HALF_HOUR_MS)).filter(
    (at) => todayHere(at) === date,
  );
}

function planOn(date: string): PlanSource {
  const source = smallSource();
  return { ...source, days: source.days.map((day) => ({ ...day, date })) };
}

describe.each(ZONES)('where the clock is that of %s', (zone, short, long) => {
  beforeEach(() => {
    process.env.TZ = zone;
    // Without this a zone that is not taken over would let every test below pass.
    expect(new Intl.DateTimeFormat('en').resolvedOptions().timeZone.replace('Calcutta', 'Kolkata')).toBe(zone);
  });

  test('days are as long as its clock makes them, and none is left out or told twice', () => {
    for (const [date, hours] of [
      [short, 23],
      [long, 25],
      ['2027-06-16', 24],
    ] as const) {
      if (date !== null) expect([date, halfHoursOf(date).length / 2]).toEqual([date, hours]);
    }
  });

  test.each(CHANGES)('a plan for %s says the same clock as anywhere', (date) => {
    const starts = [...written('ics', planOn(date)).matchAll(/^DTSTART:(\S+)/gm)].map(([, at]) => at);
    const day = date.replaceAll('-', '');
    // The hand-made day begins at 7:00; its stops lie 1,200, 5,400 and 12,400 s after its beginning.
    expect(starts).toEqual([`${day}T070000`, `${day}T072000`, `${day}T083000`, `${day}T102640`]);
    expect(localTime(date, 8 * 3600)).toBe(`${date}T08:00:00`);
    expect(localTime(date, 86_400)).toBe(`${addDays(date, 1)}T00:00:00`);
    expect(daysBetween(addDays(date, -1), addDays(date, 1))).toBe(2);
    // 2027-01-01 is a Friday; every change lies on a Saturday or a Sunday.
    const weekday = ['Fri', 'Sat', 'Sun', 'Mon', 'Tue', 'Wed', 'Thu'][daysBetween('2027-01-01', date) % 7];
    expect(formatDate(date, 'short').slice(0, 3)).toBe(weekday);
    expect(['Sat', 'Sun']).toContain(weekday);
  });
});

test('a moment is told by the clock of the machine, also in the hour that comes twice and beside the one that is left out', () => {
  const { moment } = formatterFor(readingOf({ units: 'us' }));
  process.env.TZ = 'America/New_York';
  expect(moment('2027-11-07T05:30:00Z')).toBe('Sun Nov 7, 2027, 1:30 am');
  expect(moment('2027-11-07T06:30:00Z')).toBe('Sun Nov 7, 2027, 1:30 am');
  expect(moment('2027-03-14T06:59:00Z')).toBe('Sun Mar 14, 2027, 1:59 am');
  expect(moment('2027-03-14T07:00:00Z')).toBe('Sun Mar 14, 2027, 3:00 am');
  // Kolkata is 5 h 30 min ahead of UTC the whole year, Auckland 13 h in November.
  process.env.TZ = 'Asia/Kolkata';
  expect(moment('2027-11-07T20:30:00Z')).toBe('Mon Nov 8, 2027, 2:00 am');
  process.env.TZ = 'Pacific/Auckland';
  expect(moment('2027-11-07T05:30:00Z')).toBe('Sun Nov 7, 2027, 6:30 pm');
});

test('every sheet of a book says the same in every zone', () => {
  const sheets = ZONES.map(([zone]) => {
    process.env.TZ = zone;
    return JSON.stringify(everySheet(fixtureBook()));
  });
  expect(sheets[0]?.length).toBeGreaterThan(10_000);
  expect(new Set(sheets).size).toBe(1);
});
