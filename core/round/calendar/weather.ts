import type { Book, Product, Round, WeatherDay } from '../../book/index.ts';
import { productRates } from '../../demand/index.ts';
import { addDays, formatClock, formatDuration, formatNumber } from '../../units/index.ts';
import type { ClockSpan } from './clock.ts';

/** The tightest limit of its kind among the labels of some products, and whose it is. */
export type WeatherLimit = {
  readonly what: 'wind' | 'cold' | 'heat' | 'rain';
  /** mph, F, F, hours without rain afterwards. */
  readonly value: number;
  readonly productName: string;
};

type Hour = WeatherDay['hours'][number];

/** One hour of a shift by the clock on the wall: from and to as far as the shift has them. */
export type ShiftHour = ClockSpan & {
  readonly hour: number;
  /** Whether anything was read for it. */
  readonly isRead: boolean;
  /** What forbids work, '' where nothing does. */
  readonly why: string;
};

/** What weather does to one shift. */
export type ShiftWeather = {
  readonly hours: readonly ShiftHour[];
  /** The longest stretch without a break that is open, minutes. */
  readonly openMin: number;
  /** Whether the day is on hold: no open stretch is long enough. */
  readonly isHeld: boolean;
  /** What is closed and why; '' where nothing is. */
  readonly words: string;
};

/** The products that treatments put down, each once. */
export function productsOf(book: Book, { treatmentIds }: Pick<Round, 'treatmentIds'>): readonly Product[] {
  const treatments = treatmentIds.flatMap((id) => book.treatments.filter((each) => each.id === id));
  const ids = new Set(treatments.flatMap((each) => productRates(book, each).map((rate) => rate.productId)));
  return book.products.filter((each) => ids.has(each.id));
}

/** The weather limits on the labels of these products: of each kind the tightest. */
export function weatherLimits(products: readonly Product[]): readonly WeatherLimit[] {
  return [
    ...tightest(products, 'wind', (each) => each.label.mostWindMph, 1),
    ...tightest(products, 'cold', (each) => each.label.leastAirF, -1),
    ...tightest(products, 'heat', (each) => each.label.mostAirF, 1),
    ...tightest(products, 'rain', (each) => each.label.dryHours, -1),
  ];
}

function tightest(
  products: readonly Product[],
  what: WeatherLimit['what'],
  limitOf: (product: Product) => number | undefined,
  sign: number,
): readonly WeatherLimit[] {
  const found = products.flatMap((each): WeatherLimit[] => {
    const value = limitOf(each);
    return value === undefined ? [] : [{ what, value, productName: each.name }];
  });
  return found.toSorted((left, right) => sign * (left.value - right.value)).slice(0, 1);
}

/** Hours of all records of a book, by date and hour; of two records the later one in the list counts. */
export type WeatherTable = ReadonlyMap<string, ReadonlyMap<number, Hour>>;

/** Weather records by date and hour, to be looked up. */
export function weatherTable(weather: readonly WeatherDay[]): WeatherTable {
  const table = new Map<string, Map<number, Hour>>();
  for (const { on, hours } of weather) {
    const day = table.get(on) ?? new Map<number, Hour>();
    for (const hour of hours) day.set(hour.hour, hour);
    table.set(on, day);
  }
  return table;
}

/**
 * Which hours of a shift labels leave open. An hour is closed where its wind is above the limit, its air outside of the limits, or rain
 * falls in it or in so many hours after it as the label needs dry. What was not read closes nothing. A day of which some hour was read is
 * on hold where no open stretch is as long as `leastOpenMin`, or as the whole shift where that is shorter.
 *
 * @param shift what the clock shows during the shift, in order
 */
export function shiftWeather(
  limits: readonly WeatherLimit[],
  table: WeatherTable,
  shift: readonly ClockSpan[],
  leastOpenMin: number,
): ShiftWeather {
  const hours = shiftHours(limits, table, shift);
  const length = hours.reduce((sum, each) => sum + each.toMin - each.fromMin, 0);
  const openMin = longestOpenMin(hours);
  const isHeld = hours.some((each) => each.isRead) && openMin < Math.min(leastOpenMin, length);
  return { hours, openMin, isHeld, words: closedWords(hours) };
}

/** The hours of a shift, each with what closes it. */
export function shiftHours(
  limits: readonly WeatherLimit[],
  table: WeatherTable,
  shift: readonly ClockSpan[],
): readonly ShiftHour[] {
  return shift.flatMap(hoursOf).map((span): ShiftHour => {
    const hour = Math.floor(span.fromMin / 60);
    const read = table.get(span.date)?.get(hour);
    return { ...span, hour, isRead: read !== undefined, why: whyClosed(limits, table, span.date, hour) };
  });
}

function hoursOf({ date, fromMin, toMin }: ClockSpan): readonly ClockSpan[] {
  const spans: ClockSpan[] = [];
  for (let from = fromMin; from < toMin; ) {
    const to = Math.min(toMin, (Math.floor(from / 60) + 1) * 60);
    spans.push({ date, fromMin: from, toMin: to });
    from = to;
  }
  return spans;
}

function whyClosed(limits: readonly WeatherLimit[], table: WeatherTable, date: string, hour: number): string {
  const read = table.get(date)?.get(hour);
  for (const limit of limits) {
    const words = limit.what === 'rain' ? rainWords(limit, table, date, hour) : readWords(limit, read);
    if (words !== '') return words;
  }
  return '';
}

function readWords({ what, value, productName }: WeatherLimit, read: Hour | undefined): string {
  const figure = what === 'wind' ? read?.windMph : read?.airF;
  if (figure === undefined) return '';
  const n = (amount: number): string => formatNumber(amount, Number.isInteger(amount) ? 0 : 1);
  if (what === 'wind') return figure > value ? `wind ${n(figure)} mph (${productName}: at most ${n(value)} mph)` : '';
  if (what === 'cold') return figure < value ? `air ${n(figure)} °F (${productName}: at least ${n(value)} °F)` : '';
  return figure > value ? `air ${n(figure)} °F (${productName}: at most ${n(value)} °F)` : '';
}

/** Work may end with its hour, so that hour and the dry hours after it count. */
function rainWords({ value, productName }: WeatherLimit, table: WeatherTable, date: string, hour: number): string {
  for (let after = 0; after <= Math.ceil(value); after += 1) {
    const day = addDays(date, Math.floor((hour + after) / 24));
    const rain = table.get(day)?.get((hour + after) % 24)?.rainIn ?? 0;
    if (rain <= 0) continue;
    const needs = `${productName}: ${formatNumber(value)} dry ${value === 1 ? 'hour' : 'hours'} afterwards`;
    return `rain at ${formatClock(((hour + after) % 24) * 3600)} (${needs})`;
  }
  return '';
}

function longestOpenMin(hours: readonly ShiftHour[]): number {
  let longest = 0;
  let open = 0;
  for (const each of hours) {
    open = each.why === '' ? open + each.toMin - each.fromMin : 0;
    longest = Math.max(longest, open);
  }
  return longest;
}

/** "8 am to 11 am: wind 14 mph (…)": rows of closed hours, each with the reason of its first one. */
export function closedWords(hours: readonly ShiftHour[]): string {
  const rows: { from: ShiftHour; to: ShiftHour }[] = [];
  let before: ShiftHour | null = null;
  for (const each of hours) {
    const last = rows.at(-1);
    if (each.why !== '' && before !== null && before.why !== '' && last !== undefined && alike(each, last.from))
      last.to = each;
    else if (each.why !== '') rows.push({ from: each, to: each });
    before = each;
  }
  const clock = (minutes: number): string => formatClock(minutes * 60);
  return rows.map(({ from, to }) => `${clock(from.fromMin)} to ${clock(to.toMin)}: ${from.why}`).join('; ');
}

/** Hours are told together where the same thing closes them, whatever the figure. */
function alike(one: ShiftHour, other: ShiftHour): boolean {
  const kind = (words: string): string => words.replace(/^(wind|air) \S+/, '$1');
  return kind(one.why) === kind(other.why);
}

/** "no 4 h in a row are open: 8:00 am to 4:00 pm: wind …" */
export function holdReason({ words }: ShiftWeather, leastOpenMin: number): string {
  return `weather leaves no ${formatDuration(leastOpenMin * 60)} in a row open: ${words}`;
}
