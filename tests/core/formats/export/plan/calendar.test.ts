import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarText, contentLine } from '../../../../../core/formats/export/plan/calendar-lines.ts';
import type { PlanSource } from '../../../../../core/formats/index.ts';
import { NOW_MS, named, ODD_NAMES, smallSource, written } from './sources.ts';

const octets = (text: string): number => new TextEncoder().encode(text).length;
const text = fc.string({ unit: 'binary', maxLength: 400 });

type Event = {
  readonly uid: string;
  readonly start: string;
  readonly end: string | null;
  readonly summary: string;
  readonly of: string | null;
};

/** Events as ical.js reads them. It throws for a file whose lines or components are not well formed. */
function eventsOf(file: string): readonly Event[] {
  const calendar = new ICAL.Component(ICAL.parse(file));
  expect(calendar.name).toBe('vcalendar');
  return calendar.getAllSubcomponents('vevent').map((event) => {
    const value = (name: string) => event.getFirstPropertyValue(name);
    const start = value('dtstart') as ICAL.Time;
    expect(start.zone).toBe(ICAL.Timezone.localTimezone);
    return {
      uid: String(value('uid')),
      start: String(start),
      end: value('dtend') === null ? null : String(value('dtend')),
      summary: String(value('summary')),
      of: value('related-to') === null ? null : String(value('related-to')),
    };
  });
}

/** Lines with their folds taken back (RFC 5545, section 3.1). */
const unfolded = (file: string): string => file.replaceAll('\r\n ', '');

describe('content lines (RFC 5545, section 3.1)', () => {
  it('are at most 75 octets long, end with CRLF, and are the same again when unfolded', () => {
    fc.assert(
      fc.property(text, (raw) => {
        const value = calendarText(raw);
        const line = contentLine('DESCRIPTION', value);
        expect(line.endsWith('\r\n')).toBe(true);
        const parts = line.slice(0, -2).split('\r\n');
        for (const part of parts) expect(octets(part)).toBeLessThanOrEqual(75);
        for (const part of parts.slice(1)) expect(part.startsWith(' ')).toBe(true);
        expect(line.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        expect(unfolded(line)).toBe(`DESCRIPTION:${value}\r\n`);
        // No part ends inside a character.
        for (const part of parts) expect(part).not.toMatch(/^ ?\p{Surrogate}|\p{Surrogate}$/u);
      }),
    );
  });

  it('are as long as they may be: 75 octets stay whole, 76 are folded', () => {
    expect(contentLine('N', 'x'.repeat(73))).toBe(`N:${'x'.repeat(73)}\r\n`);
    expect(contentLine('N', 'x'.repeat(74))).toBe(`N:${'x'.repeat(73)}\r\n x\r\n`);
    // 71 octets, and 4 more for a plant: 75. One octet more and the plant goes to the next line, which has 1 + 4.
    expect(contentLine('N', `${'x'.repeat(69)}🌱`)).toBe(`N:${'x'.repeat(69)}🌱\r\n`);
    expect(contentLine('N', `${'x'.repeat(70)}🌱`)).toBe(`N:${'x'.repeat(70)}\r\n 🌱\r\n`);
  });
});

describe('texts (RFC 5545, section 3.3.11)', () => {
  it('have backslash, semicolon, comma and ends of lines escaped, and no control characters', () => {
    expect(calendarText('a;b,c\\d\ne\r\nf:g"h')).toBe('a\\;b\\,c\\\\d\\ne\\nf:g"h');
    expect(calendarText('a\u0000b\u001bc\u007fd\te')).toBe('abcd\te');
    expect(calendarText('\ud800x')).toBe('\ufffdx');
  });

  it('are read back by another reader', () => {
    fc.assert(
      fc.property(text, (raw) => {
        const line = contentLine('SUMMARY', calendarText(raw));
        const expected = raw
          .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
          .replace(/(?![\n\t])\p{Cc}/gu, '')
          .replace(/\p{Cs}/gu, '\ufffd');
        const parsed = ICAL.parse(`BEGIN:VEVENT\r\n${line}END:VEVENT\r\n`);
        expect(new ICAL.Component(parsed).getFirstPropertyValue('summary')).toBe(expected);
      }),
    );
  });
});

describe('a calendar of days and stops', () => {
  it('has an event for the day and for each stop, in order, with floating times', () => {
    const events = eventsOf(written('ics', smallSource()));
    const [day] = events;
    expect(events.map(({ start, end, summary }) => [start, end, summary])).toEqual([
      // The hand-made day begins at 7:00 and lasts 15,358 s; its stops lie 1,200, 5,400 and 12,400 s after its beginning.
      ['2031-04-01T07:00:00', '2031-04-01T11:15:58', 'Rig North: 3 stops'],
      ['2031-04-01T07:20:00', '2031-04-01T08:20:00', '1. acre'],
      ['2031-04-01T08:30:00', '2031-04-01T10:16:40', '2. birch'],
      ['2031-04-01T10:26:40', '2031-04-01T10:50:58', '3. cedar'],
    ]);
    expect(events.map((each) => each.of)).toEqual([null, day?.uid, day?.uid, day?.uid]);
    expect(written('ics', smallSource())).not.toMatch(/^DT(START|END)[^\r]*(Z|TZID)/m);
  });

  it('has what RFC 5545 asks of a calendar and of events (sections 3.4, 3.6 and 3.6.1)', () => {
    const file = unfolded(written('ics', smallSource()));
    expect(file).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:[^\r]+\r\n/);
    expect(file).toMatch(/END:VCALENDAR\r\n$/);
    const events = file.split('BEGIN:VEVENT\r\n').slice(1);
    expect(events).toHaveLength(4);
    for (const event of events) {
      const names = event.split('\r\n').map((line) => line.split(/[:;]/, 1)[0]);
      for (const once of ['UID', 'DTSTAMP', 'DTSTART', 'SUMMARY']) {
        expect(names.filter((each) => each === once)).toHaveLength(1);
      }
      expect(event).toContain('DTSTAMP:20261127T103005Z\r\n');
      const geo = /GEO:([-\d.]+);([-\d.]+)\r\n/.exec(event);
      if (geo !== null) expect([Number(geo[1]), Number(geo[2])].map(Math.round)).toEqual([40, -89]);
    }
    expect(new Set(eventsOf(file).map((each) => each.uid)).size).toBe(events.length);
  });

  it('keeps the name of an event when a stop moves to another day or rig, and tells visits apart', () => {
    const { book, plan } = smallSource();
    const [day] = plan.days;
    const moved: PlanSource = {
      book,
      plan,
      days: plan.days.map((each) => ({ ...each, date: '2031-04-02', rigId: 'south', stops: each.stops.toReversed() })),
    };
    const uids = (source: PlanSource) =>
      eventsOf(written('ics', source))
        .slice(1)
        .map((each) => each.uid)
        .sort();
    expect(uids(moved)).toEqual(uids({ book, plan, days: plan.days }));
    const twice = { book, plan, days: [...plan.days, ...plan.days.map((each) => ({ ...each, date: '2031-04-03' }))] };
    const all = eventsOf(written('ics', twice)).map((each) => each.uid);
    expect(new Set(all).size).toBe(2 * (1 + (day?.stops.length ?? 0)));
  });

  it('goes over midnight, and leaves the end out of what takes no time', () => {
    const { book, plan } = smallSource();
    const days = plan.days.map((day) => ({
      ...day,
      date: '2028-02-28',
      endSec: 86_400 + 61,
      stops: day.stops.slice(0, 1).map((stop) => ({ ...stop, arriveSec: 86_400.4, leaveSec: 86_400.4 })),
    }));
    expect(eventsOf(written('ics', { book, plan, days })).map(({ start, end }) => [start, end])).toEqual([
      ['2028-02-28T07:00:00', '2028-02-29T00:01:01'],
      ['2028-02-29T00:00:00', null],
    ]);
  });

  it.each(ODD_NAMES)('holds %j as text', (name) => {
    const file = written('ics', smallSource(named(name)), name);
    for (const line of file.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const found = eventsOf(file);
    expect(found).toHaveLength(4);
    for (const { summary } of found.slice(1)) {
      const kept = name
        .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
        .replace(/(?![\n\t])\p{Cc}/gu, '')
        .replace(/\p{Cs}/gu, '\ufffd');
      expect(summary).toContain(kept);
    }
  });

  it('is the same at the same time, and only the stamp tells another time', () => {
    const source = smallSource();
    expect(written('ics', source)).toBe(written('ics', structuredClone(source)));
    expect(NOW_MS).toBe(1_795_775_405_000);
  });
});
