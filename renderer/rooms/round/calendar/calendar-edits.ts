import { err, type Result } from '../../../../core/base/index.ts';
import type { Book, Calendar, WeatherDay } from '../../../../core/book/index.ts';
import type { WeatherHours } from '../../../../core/formats/index.ts';
import { calendarOf } from '../../../../core/round/calendar/index.ts';
import { edit, putRecord, showError } from '../../../stores/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';

type Edited = Result<{ readonly label: string }>;
type HourMember = 'windMph' | 'airF' | 'rainIn';

/** Changes settings of the book's calendar as one step. */
export function changeCalendar(book: Book, changes: Partial<Calendar>, label: string): Edited {
  return told(edit({ kind: 'set', changes: { calendar: { ...calendarOf(book), ...changes } }, label }));
}

function told(done: Edited): Edited {
  if (!done.ok) showError(done.error);
  return done;
}

/** The holidays with one of this name, in order; without it where the name is null. */
export function withHoliday({ holidays }: Calendar, on: string, name: string | null): Calendar['holidays'] {
  const rest = holidays.filter((each) => each.on !== on);
  return name === null ? rest : [...rest, { on, name }].toSorted((one, other) => (one.on < other.on ? -1 : 1));
}

/** The record of a day's weather, or an empty one. */
export function weatherOn(book: Book, on: string): WeatherDay {
  return book.weather.findLast((each) => each.on === on) ?? { id: `weather-${on}`, on, source: 'typed', hours: [] };
}

/** A day's weather with one figure of one hour set, or taken away; hours without any figure are left out. */
export function withHour(day: WeatherDay, hour: number, member: HourMember, value: number | null): WeatherDay {
  const before = day.hours.find((each) => each.hour === hour) ?? { hour };
  const { [member]: _, ...rest } = before;
  const changed = value === null ? rest : { ...rest, [member]: value };
  const hours = [...day.hours.filter((each) => each.hour !== hour), changed]
    .filter((each) => Object.keys(each).length > 1)
    .toSorted((one, other) => one.hour - other.hour);
  return { ...day, hours };
}

/** Stores a day's weather; one without any hour is taken out. */
export function putWeather(book: Book, day: WeatherDay, label: string): Edited {
  const isThere = book.weather.some((each) => each.id === day.id);
  if (day.hours.length > 0) return told(putRecord('weather', day, label));
  if (!isThere)
    return err('nothing-to-do', 'weather', calendarWords.edits.nothingToTake, calendarWords.edits.nothingToTakeAdvice);
  return told(edit({ kind: 'remove', table: 'weather', id: day.id, label }));
}

/** Takes days of a file into the book as one step: its hours stand in place of those that were there, the others stay. */
export function takeWeather(book: Book, days: readonly WeatherHours[], source: string): Edited {
  const actions = days.map(({ on, hours }) => {
    const before = weatherOn(book, on);
    const taken = new Set(hours.map((each) => each.hour));
    const all = [...before.hours.filter((each) => !taken.has(each.hour)), ...hours];
    const record = { ...before, source, hours: all.toSorted((one, other) => one.hour - other.hour) };
    return { kind: 'put', table: 'weather', record } as const;
  });
  return told(edit({ kind: 'several', actions, label: calendarWords.edits.taken(source) }));
}
