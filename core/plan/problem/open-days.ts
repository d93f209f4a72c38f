import { type Issue, issue } from '../../base/index.ts';
import type { Book, Property, Rig, Round } from '../../book/index.ts';
import { calendarOf, earliestWorkDay, lawnClosedWhy, noticeDaysOf, roundDays } from '../../round/calendar/index.ts';
import { type AreaOf, type PlannedDays, splitSpans } from '../../round/programme/index.ts';
import { type LawnWindow, lawnWindows } from '../../round/timing/index.ts';
import { formatDuration, quantity } from '../../units/index.ts';
import type { ClosedDay, TreatHours } from './types.ts';
import { weatherDays } from './weather-days.ts';

/** What is asked about days beside the book. */
export type DayQuestion = {
  readonly areaOf: AreaOf;
  /** What the round puts down on a lawn. */
  readonly productsOn: (property: Property) => readonly string[];
  /** The day on which is asked; absent: notice is not asked. */
  readonly today?: string;
  /** Days of other rounds' plans, for split applications; absent: only what was recorded is asked. */
  readonly planned?: PlannedDays;
};

/** Which days are open to the lawns of a round. */
export type OpenDays = {
  /** Per day, for work with some products on one lawn: null where it may be done. */
  readonly closedFor: (property: Property, productIds: readonly string[]) => readonly (ClosedDay | null)[];
  /** Per day: the hours that weather leaves to work with some products, null for all. */
  readonly hoursFor: (productIds: readonly string[]) => readonly (TreatHours | null)[];
  /** Whether a rig works on a day. */
  readonly works: (rig: number, day: number) => boolean;
  /** Why no lawn of the round has any day, one line a day; '' where some day is open. */
  readonly noneOpen: string;
  /** What is to be said, of weather for the work that was asked for until then. */
  readonly issues: () => readonly Issue[];
};

type Days = readonly (ClosedDay | null)[];

/**
 * Asks calendar, weather, customers, promises, notice and split applications about every day of a round. Of several reasons one is told:
 * a promise for another day, then holiday and weather, the customer's own days, the days held back, split application, notice. A promise
 * opens its day where that is held back or comes too soon for notice, and nothing else.
 *
 * @param dates those of the round that are asked for
 */
export function openDays(
  book: Book,
  round: Round,
  dates: readonly string[],
  rigs: readonly Rig[],
  where: string,
  question: DayQuestion,
): OpenDays {
  const whole = roundDays(calendarOf(book), round);
  const weather = weatherDays(book, round, dates, rigs, where);
  const kinds = new Map(whole.days.map((each) => [each.date, each]));
  const ofAll: Days = dates.map((date, day) => {
    const known = kinds.get(date);
    return known?.kind === 'holiday' ? closed('holiday', known.why) : (weather.ofAll[day] ?? null);
  });
  const heldBack: Days = dates.map((date) =>
    kinds.get(date)?.kind === 'held-back' ? closed('held-back', kinds.get(date)?.why ?? '') : null,
  );
  const promises = new Map(round.promised?.map((each) => [each.propertyId, each.on]));
  const split = splitSpans(book, round, question.areaOf, question.planned);
  const notice = noticeFor(book, dates, question.today);
  const untimely = timingFor(book, round);
  const plain: Days = dates.map((_, day) => ofAll[day] ?? heldBack[day] ?? null);
  const closedFor = (property: Property, productIds: readonly string[]): Days => {
    const promised = promises.get(property.id);
    const span = split(property);
    const weathered = weather.of(productIds).closed;
    const own = dates.map((date, day): ClosedDay | null => {
      if (promised !== undefined && promised !== date) return closed('promised', `promised for ${promised}`);
      const fixed = ofAll[day] ?? weathered[day] ?? customerWhy(property, date) ?? untimely(property, date);
      if (fixed !== null) return fixed;
      const held = promised === undefined ? (heldBack[day] ?? null) : null;
      return held ?? splitWhy(span, date) ?? (promised === undefined ? notice(property, date) : null);
    });
    return own.every((each, day) => each === plain[day]) ? plain : own;
  };
  const promisedOpen = dates.some((date, day) => ofAll[day] === null && [...promises.values()].includes(date));
  const noneOpen = plain.every((each) => each !== null) && !promisedOpen ? closedWords(dates, plain) : '';
  const promisedDays = (property: Property): Days => closedFor(property, question.productsOn(property));
  return {
    closedFor,
    hoursFor: (productIds) => weather.of(productIds).hours,
    works: weather.works,
    noneOpen,
    issues: () => [...heldNote(whole, where), ...weather.issues(), ...promiseIssues(book, round, promisedDays, dates)],
  };
}

function closed(code: ClosedDay['code'], words: string, isPassing = false): ClosedDay {
  return { code, words, isPassing };
}

function customerWhy(property: Property, date: string): ClosedDay | null {
  const why = lawnClosedWhy(property, date);
  return why === null ? null : closed('customer', why);
}

/** Days before a lawn's window opens, and after its last useful day where the round says so. */
function timingFor(book: Book, round: Round): (property: Property, date: string) => ClosedDay | null {
  const windows = lawnWindows(book, round);
  if (windows === null) return () => null;
  const name = book.timings.find((each) => each.id === round.timingId)?.name ?? '';
  return (property, date) => {
    const words = untimelyWords(windows(property), date, name, round.onlyInWindow === true);
    return words === '' ? null : closed('timing', words);
  };
}

function untimelyWords({ opensOn, lastOn, isNever }: LawnWindow, date: string, name: string, ends: boolean): string {
  if (isNever) return `by ${name} it is of no use this season`;
  if (opensOn !== null && date < opensOn) return `by ${name} it is of use from ${opensOn}`;
  if (ends && lastOn !== null && date > lastOn) return `by ${name} it is of use until ${lastOn}`;
  return '';
}

function splitWhy(span: ReturnType<ReturnType<typeof splitSpans>>, date: string): ClosedDay | null {
  if (span === null || (date >= span.notBefore && (span.notAfter === null || date <= span.notAfter))) return null;
  return closed('interval', span.words, !span.isRecorded);
}

function noticeFor(
  book: Book,
  dates: readonly string[],
  today: string | undefined,
): (property: Property, date: string) => ClosedDay | null {
  const calendar = calendarOf(book);
  if (today === undefined || dates.length === 0) return () => null;
  const first = new Map<number, { readonly date: string; readonly closed: ClosedDay }>();
  return (property, date) => {
    const days = noticeDaysOf(property, calendar);
    if (days === 0) return null;
    const known = first.get(days) ?? firstAfterNotice(days, earliestWorkDay(property, calendar, today));
    first.set(days, known);
    return date < known.date ? known.closed : null;
  };
}

function firstAfterNotice(days: number, date: string): { readonly date: string; readonly closed: ClosedDay } {
  const words = `${days} ${days === 1 ? 'day' : 'days'} of notice, given today, is for ${date}`;
  return { date, closed: closed('notice', words, true) };
}

/** "2027-05-12 holiday (…); 2027-05-13 held back for weather": rows of days with one reason are told together. */
export function closedWords(dates: readonly string[], days: Days): string {
  const rows: { from: string; to: string; words: string }[] = [];
  days.forEach((each, day) => {
    const date = dates[day] ?? '';
    const last = rows.at(-1);
    if (last !== undefined && last.words === each?.words) last.to = date;
    else rows.push({ from: date, to: date, words: each?.words ?? 'open' });
  });
  return rows.map(({ from, to, words }) => `${from === to ? from : `${from} to ${to}`} ${words}`).join('; ');
}

function heldNote({ days, words }: ReturnType<typeof roundDays>, where: string): readonly Issue[] {
  if (days.every((each) => each.kind !== 'held-back')) return [];
  return [issue('note', 'days-held-back', where, `${words}.`)];
}

/** Promises that cannot be kept: the day is none of the round's, or is closed. */
function promiseIssues(
  book: Book,
  round: Round,
  closedFor: (property: Property) => Days,
  dates: readonly string[],
): readonly Issue[] {
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  return (round.promised ?? []).flatMap(({ propertyId, on }): Issue[] => {
    const property = properties.get(propertyId);
    if (property === undefined) return [];
    const where = `property ${property.name}`;
    if (!round.dates.includes(on)) return [issue('warning', 'promise-broken', where, noDayWords(on))];
    const day = dates.indexOf(on);
    const why = day < 0 ? null : (closedFor(property)[day] ?? null);
    return why === null
      ? []
      : [issue('warning', 'promise-broken', where, `It is promised for ${on}, but: ${why.words}.`)];
  });
}

function noDayWords(on: string): string {
  return `It is promised for ${on}, which is no day of the round: add the day or promise another one.`;
}

/** What shortens a rig's day, or makes its clock differ from the plan's, as notes. */
export function reserveNote(serviceMin: number, where: string): readonly Issue[] {
  if (serviceMin <= 0) return [];
  const words = `${formatDuration(quantity(serviceMin * 60))} of every rig's day are kept free for service calls; what is planned beyond the rest of the shift counts as overtime.`;
  return [issue('note', 'day-reserve', where, words)];
}
