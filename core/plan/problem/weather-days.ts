import { type Issue, issue } from '../../base/index.ts';
import type { Book, Product, Rig, Round } from '../../book/index.ts';
import {
  calendarOf,
  holdReason,
  keptIn,
  type OpenStretch,
  type ProductWeather,
  roundWeather,
  weatherAsked,
  weatherLimits,
} from '../../round/calendar/index.ts';
import { formatClock } from '../../units/index.ts';
import { minutesToMs } from './scale.ts';
import type { ClosedDay, TreatHours } from './types.ts';

type Days = readonly (ClosedDay | null)[];

/** Per day: why work with some products is not done on it, and the hours for it where only a part of the day is open. */
type WorkDays = { readonly closed: Days; readonly hours: readonly (TreatHours | null)[] };

/** What weather leaves of the days of a round. */
export type WeatherDays = {
  /** Days on which all rigs stay in. */
  readonly ofAll: Days;
  readonly works: (rig: number, day: number) => boolean;
  readonly of: (productIds: readonly string[]) => WorkDays;
  /** Said of the rigs that stay in and of all work that was asked for until then. */
  readonly issues: () => readonly Issue[];
};

/** Asks the weather of a book for the work of a round. Work is bound by the labels of the products that it puts down. */
export function weatherDays(
  book: Book,
  round: Round,
  dates: readonly string[],
  rigs: readonly Rig[],
  where: string,
): WeatherDays {
  const open = { closed: dates.map(() => null), hours: dates.map(() => null) };
  const shifts = roundWeather(book, round, dates, rigs);
  if (shifts === null) return { ofAll: open.closed, works: () => true, of: () => open, issues: () => [] };
  const { leastOpenMin } = calendarOf(book);
  const ask = weatherAsked(book, dates, rigs);
  const kept = keptIn(book, round, dates, rigs);
  const issues = new Map<string, Issue>();
  const say = (at: string, words: string): void => {
    issues.set(`${at} ${words}`, issue('warning', 'weather-limits', at, words));
  };
  const ofAll = kept.map((ofDay, day): ClosedDay | null => {
    const [first] = shifts[day] ?? [];
    if (first !== undefined && ofDay.every((each) => each)) return closedBy(holdReason(first, leastOpenMin));
    ofDay.forEach((isIn, rig) => {
      const shift = shifts[day]?.[rig];
      const at = `${where}, ${dates[day]}, rig ${rigs[rig]?.name}`;
      if (isIn && shift !== undefined) say(at, `It stays in: ${holdReason(shift, leastOpenMin)}.`);
    });
    return null;
  });
  const known = new Map<string, WorkDays>();
  const of = (productIds: readonly string[]): WorkDays => {
    const key = JSON.stringify(productIds);
    const before = known.get(key);
    if (before !== undefined) return before;
    const products = book.products.filter((each) => productIds.includes(each.id));
    const weather = ask(products);
    const found = weather === null ? open : workDays(weather, leastOpenMin);
    known.set(key, found);
    found.hours.forEach((hours, day) => {
      const stretch = weather?.stretches[day] ?? null;
      if (hours !== null && stretch !== null) say(`${where}, ${dates[day]}`, partWords(products, stretch));
    });
    return found;
  };
  return { ofAll, works: (rig, day) => kept[day]?.[rig] !== true, of, issues: () => [...issues.values()] };
}

function workDays({ shifts, stretches }: ProductWeather, leastOpenMin: number): WorkDays {
  const closed = shifts.map((ofDay): ClosedDay | null => {
    const [first] = ofDay;
    const isHeld = first !== undefined && ofDay.every((each) => each.isHeld);
    return isHeld ? closedBy(holdReason(first, leastOpenMin)) : null;
  });
  const hours = stretches.map((each, day) => (each === null || closed[day] !== null ? null : hoursOf(each)));
  return { closed, hours };
}

function closedBy(words: string): ClosedDay {
  return { code: 'weather', words, isPassing: false };
}

function hoursOf({ fromMin = 0, toMin, words }: OpenStretch): TreatHours {
  return { openMs: minutesToMs(fromMin), ...(toMin === undefined ? {} : { closeMs: minutesToMs(toMin) }), words };
}

/** "The weather closes a part of the day to Forecrop 3: …. Work with it is planned from 9:00 am to 1:00 pm." */
function partWords(products: readonly Product[], { fromMin, toMin, isOneOfSeveral, words }: OpenStretch): string {
  const names = [...new Set(weatherLimits(products).map((each) => each.productName))].join(', ');
  const from = fromMin === undefined ? [] : [`from ${formatClock(fromMin * 60)}`];
  const to = toMin === undefined ? [] : [`to ${formatClock(toMin * 60)}`];
  const which = isOneOfSeveral ? ', the longest of the open stretches alone' : '';
  const planned = `Work with it is planned ${[...from, ...to].join(' ')}${which}.`;
  return `The weather closes a part of the day to ${names}: ${words}. ${planned}`;
}
