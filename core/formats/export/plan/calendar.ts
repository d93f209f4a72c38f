import { fingerprint } from '../../../base/index.ts';
import { formatArea } from '../../../units/index.ts';
import { degreesText } from '../degrees.ts';
import { calendarText, contentLine, floatingTime, utcTime } from './calendar-lines.ts';
import { type DayView, dayView, type StopView } from './day-view.ts';
import { localTime } from './local-time.ts';
import { INVENTED, type PlanSource, type PlanWriteOptions } from './source.ts';
import { clockWords, dayName, stopLines } from './words.ts';

type Property = readonly [name: string, value: string];

/**
 * An iCalendar file (RFC 5545): an event for every day of a rig and one for each of its stops, joined to it by RELATED-TO. Times are
 * floating, for books know no zones. A UID belongs to the round and the property (or to the date and the rig), so that a plan that is
 * written again moves its events instead of doubling them.
 */
export function writeCalendar(source: PlanSource, { title, nowMs }: PlanWriteOptions): string {
  const visits = new Map<string, number>();
  const events = source.days.flatMap((day) => {
    const view = dayView(source.book, day);
    const dayUid = uidOf(source, 'day', day.date, day.rigId);
    const stops = view.stops.map((stop) => {
      // A property that is visited twice in a round has an event for each visit.
      const visit = (visits.get(stop.propertyId) ?? 0) + 1;
      visits.set(stop.propertyId, visit);
      return stopEvent(source, view, stop, [uidOf(source, 'stop', stop.propertyId, String(visit)), dayUid]);
    });
    return [dayEvent(source, view, dayUid), ...stops];
  });
  const stamp: Property = ['DTSTAMP', utcTime(nowMs)];
  const lines = [
    contentLine('BEGIN', 'VCALENDAR'),
    contentLine('VERSION', '2.0'),
    contentLine('PRODID', '-//Swardway//Plan//EN'),
    contentLine('CALSCALE', 'GREGORIAN'),
    // The name of a calendar: RFC 7986, section 5.1.
    contentLine('NAME', calendarText(title)),
    ...events.flatMap((event) => [
      contentLine('BEGIN', 'VEVENT'),
      ...[stamp, ...event].map(([name, value]) => contentLine(name, value)),
      contentLine('END', 'VEVENT'),
    ]),
    contentLine('END', 'VCALENDAR'),
  ];
  return lines.join('');
}

function uidOf({ plan }: PlanSource, ...parts: readonly string[]): string {
  return `swardway-${parts[0]}-${fingerprint([plan.bookId, plan.roundId, ...parts])}`;
}

/** Beginning and end; what takes no time has no end, which must lie later (RFC 5545, section 3.6.1). */
function span(date: string, startSec: number, endSec: number): readonly Property[] {
  const [start, end] = [startSec, endSec].map((sec) => floatingTime(localTime(date, sec))) as [string, string];
  return [['DTSTART', start], ...(end > start ? [['DTEND', end] as const] : [])];
}

function dayEvent({ book, plan }: PlanSource, { day, route }: DayView, uid: string): readonly Property[] {
  const start = route.find((each) => each.what === 'start');
  const end = route.find((each) => each.what === 'end');
  const lines = [
    plan.roundName,
    `${day.stops.length} stops, ${day.loads.length} loads, ${formatArea(day.treatedSqFt, book.units)} treated`,
    ...(end === undefined ? [] : [`${end.name} at ${clockWords(book, end.sec)}`]),
    ...(plan.invented || book.invented ? [INVENTED] : []),
  ];
  return [
    ['UID', uid],
    ...span(day.date, day.startSec, day.endSec),
    ['SUMMARY', calendarText(`${day.rigName}: ${day.stops.length} stops`)],
    ['DESCRIPTION', calendarText(lines.join('\n'))],
    ...(start === undefined ? [] : [['LOCATION', calendarText(start.name)] as const]),
    ['CATEGORIES', 'Day'],
    // The stops keep the day busy.
    ['TRANSP', 'TRANSPARENT'],
  ];
}

function stopEvent(
  { book }: PlanSource,
  { day }: DayView,
  stop: StopView,
  [uid, dayUid]: readonly [string, string],
): readonly Property[] {
  const place = stop.address === '' ? stop.name : stop.address;
  const geo = stop.at === null ? [] : [['GEO', [...stop.at].reverse().map(degreesText).join(';')] as const];
  return [
    ['UID', uid],
    ...span(day.date, stop.arriveSec, stop.leaveSec),
    ['SUMMARY', calendarText(`${stop.number}. ${stop.name}`)],
    ['DESCRIPTION', calendarText([dayName(day), ...stopLines(book, stop)].join('\n'))],
    ['LOCATION', calendarText(place)],
    ...geo,
    ['CATEGORIES', 'Stop'],
    ['RELATED-TO', dayUid],
  ];
}
