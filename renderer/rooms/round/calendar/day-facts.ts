import { type Book, type Round, WEEKDAYS } from '../../../../core/book/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import {
  calendarOf,
  holdReason,
  holidayWhy,
  isWorkday,
  keptIn,
  noticeDate,
  roundDays,
  roundWeather,
  type Weekday,
  weekdayOf,
} from '../../../../core/round/calendar/index.ts';
import { addDays } from '../../../../core/units/index.ts';
import type { WeekBegin } from '../../../format/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';

/** What is to be said of one date of the calendar. */
export type DayFacts = {
  readonly date: string;
  /** `free` is no day of the round, but one that could be; `off` is not worked at all. */
  readonly kind: 'worked' | 'held-back' | 'on-hold' | 'holiday' | 'free' | 'off';
  /** Why nothing is planned on it, '' where something may be. */
  readonly why: string;
  /** Hours that weather closes on a day that is worked all the same, '' for none. */
  readonly weather: string;
  /** Stops that the plan has on it, over all rigs. */
  readonly stops: number;
  /** Lawns that are promised for it. */
  readonly promised: number;
  /** Lawns whose people have to be told on it, of those that are planned or promised. */
  readonly tell: readonly string[];
};

/** Everything of a round by date: its days, and those on which people are to be told. */
export function dayFacts(book: Book, round: Round, plan: Plan | null): ReadonlyMap<string, DayFacts> {
  const calendar = calendarOf(book);
  const rigs = round.rigIds.flatMap((id) => book.rigs.filter((each) => each.id === id));
  const { days } = roundDays(calendar, round);
  const dates = days.map((each) => each.date);
  const weather = roundWeather(book, round, dates, rigs);
  const kept = keptIn(book, round, dates, rigs);
  const stops = stopsByDate(plan);
  const promised = counted((round.promised ?? []).map((each) => each.on));
  const tell = tellByDate(book, round, plan);
  const facts = new Map<string, DayFacts>();
  days.forEach(({ date, kind, why }, index) => {
    const shifts = weather?.[index] ?? [];
    const isHeld = shifts.length > 0 && kept[index]?.every((each) => each) === true;
    const [first] = shifts;
    const held = isHeld && first !== undefined && kind !== 'holiday' ? holdReason(first, calendar.leastOpenMin) : '';
    facts.set(date, {
      date,
      kind: held === '' ? kind : 'on-hold',
      why: held === '' ? why : held,
      weather: held === '' ? (shifts.find((each) => each.words !== '')?.words ?? '') : '',
      stops: stops.get(date) ?? 0,
      promised: promised.get(date) ?? 0,
      tell: tell.get(date) ?? [],
    });
  });
  for (const date of new Set([...tell.keys(), ...stops.keys()])) {
    if (!facts.has(date))
      facts.set(date, { ...freeDay(book, date), stops: stops.get(date) ?? 0, tell: tell.get(date) ?? [] });
  }
  return facts;
}

/** A date that is none of the round's. */
export function freeDay(book: Book, date: string): DayFacts {
  const calendar = calendarOf(book);
  const holiday = holidayWhy(calendar, date);
  const kind = holiday === null ? (isWorkday(calendar, date) ? 'free' : 'off') : 'holiday';
  const why = holiday ?? (kind === 'free' ? calendarWords.facts.notInRound : calendarWords.facts.notWorked);
  return { date, kind, why, weather: '', stops: 0, promised: 0, tell: [] };
}

function stopsByDate(plan: Plan | null): ReadonlyMap<string, number> {
  const stops = new Map<string, number>();
  for (const day of plan?.days ?? []) stops.set(day.date, (stops.get(day.date) ?? 0) + day.stops.length);
  return stops;
}

function counted(dates: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const date of dates) counts.set(date, (counts.get(date) ?? 0) + 1);
  return counts;
}

/** Names of the lawns to tell, by the date on which they have to be told. */
function tellByDate(book: Book, round: Round, plan: Plan | null): ReadonlyMap<string, readonly string[]> {
  const calendar = calendarOf(book);
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  const works = new Map((round.promised ?? []).map((each) => [each.propertyId, each.on]));
  for (const day of plan?.days ?? []) for (const stop of day.stops) works.set(stop.propertyId, day.date);
  const tell = new Map<string, string[]>();
  for (const [id, on] of works) {
    const property = properties.get(id);
    const date = property === undefined ? null : noticeDate(property, calendar, on);
    if (date === null || property === undefined) continue;
    const names = tell.get(date);
    if (names === undefined) tell.set(date, [property.name]);
    else names.push(property.name);
  }
  return tell;
}

/** The months, YYYY-MM, that some dates lie in, from the first to the last without a gap. */
export function monthsOf(dates: readonly string[]): readonly string[] {
  const sorted = dates.toSorted();
  const last = (sorted.at(-1) ?? '').slice(0, 7);
  const months: string[] = [];
  for (let month = (sorted[0] ?? '').slice(0, 7); month !== '' && month <= last; month = nextMonth(month))
    months.push(month);
  return months;
}

function nextMonth(month: string): string {
  return addDays(`${month}-28`, 4).slice(0, 7);
}

/** Weeks of a month that begin on the given day; null for days of other months. */
export function weeksOf(month: string, begin: WeekBegin): readonly (readonly (string | null)[])[] {
  const first = `${month}-01`;
  const lead = weekFrom(begin).indexOf(weekdayOf(first));
  const weeks: (string | null)[][] = [];
  let date = addDays(first, -lead);
  do {
    weeks.push(
      Array.from({ length: 7 }, (_, at) => {
        const day = addDays(date, at);
        return day.startsWith(month) ? day : null;
      }),
    );
    date = addDays(date, 7);
  } while (date.startsWith(month));
  return weeks;
}

/** The days of a week in the order of its columns. */
export function weekFrom(begin: WeekBegin): readonly Weekday[] {
  const at = WEEKDAYS.indexOf(begin);
  return [...WEEKDAYS.slice(at), ...WEEKDAYS.slice(0, at)];
}

/** The few words that a day shows in the grid, most important first. */
export function dayTags(facts: DayFacts): readonly string[] {
  const kinds = {
    'held-back': calendarWords.facts.heldBack,
    'on-hold': calendarWords.facts.onHold,
    holiday: calendarWords.month.holiday,
  } as const;
  const kind = facts.kind === 'worked' || facts.kind === 'free' || facts.kind === 'off' ? null : kinds[facts.kind];
  return [
    ...(facts.stops > 0 ? [commonWords.stops(facts.stops)] : []),
    ...(kind === null ? [] : [kind]),
    ...(facts.weather === '' ? [] : [calendarWords.facts.weather]),
    ...(facts.promised > 0 ? [calendarWords.facts.promised(facts.promised)] : []),
    ...(facts.tell.length > 0 ? [calendarWords.facts.tell(facts.tell.length)] : []),
  ];
}
