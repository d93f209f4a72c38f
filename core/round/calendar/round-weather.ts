import type { Book, Product, Rig, Round } from '../../book/index.ts';
import { shiftOnClock } from './clock.ts';
import { type OpenStretch, openStretch } from './open-stretch.ts';
import { productsOf, type ShiftWeather, shiftWeather, weatherLimits, weatherTable } from './weather.ts';
import { calendarOf } from './working-days.ts';

/** What weather does to work with some products, day by day. */
export type ProductWeather = {
  /** [day][rig] */
  readonly shifts: readonly (readonly ShiftWeather[])[];
  /** [day]: the hours that are open for the work, null where nothing is closed. */
  readonly stretches: readonly (OpenStretch | null)[];
};

/**
 * Asks what weather does on some days to the shifts of some rigs; the answer is null for products without limits, and where the book has no
 * weather.
 */
export function weatherAsked(
  book: Book,
  dates: readonly string[],
  rigs: readonly Rig[],
): (products: readonly Product[]) => ProductWeather | null {
  const { clockChange, leastOpenMin } = calendarOf(book);
  const table = weatherTable(book.weather);
  const known = new Map<string, ProductWeather>();
  return (products) => {
    const limits = weatherLimits(products);
    if (limits.length === 0 || book.weather.length === 0) return null;
    const key = JSON.stringify(limits);
    const found = known.get(key) ?? {
      shifts: dates.map((date) =>
        rigs.map((rig) => {
          const shift = shiftOnClock(date, rig.shiftStartMin, rig.shiftMin, clockChange);
          return shiftWeather(limits, table, shift, leastOpenMin);
        }),
      ),
      stretches: dates.map((date) => openStretch(limits, table, date, rigs, clockChange)),
    };
    known.set(key, found);
    return found;
  };
}

/** What weather does to the shifts of rigs on the days of a round, by the tightest limits of all of its products: [day][rig], or null. */
export function roundWeather(
  book: Book,
  round: Pick<Round, 'treatmentIds'>,
  dates: readonly string[],
  rigs: readonly Rig[],
): ProductWeather['shifts'] | null {
  return weatherAsked(book, dates, rigs)(productsOf(book, round))?.shifts ?? null;
}

/** Whether weather keeps a rig in on a day: it leaves the shift too little time for every treatment of the round. [day][rig] */
export function keptIn(
  book: Book,
  { treatmentIds }: Pick<Round, 'treatmentIds'>,
  dates: readonly string[],
  rigs: readonly Rig[],
): readonly (readonly boolean[])[] {
  const ask = weatherAsked(book, dates, rigs);
  const each = treatmentIds.map((id) => ask(productsOf(book, { treatmentIds: [id] }))?.shifts ?? null);
  return dates.map((_, day) =>
    rigs.map((__, rig) => each.length > 0 && each.every((shifts) => shifts?.[day]?.[rig]?.isHeld === true)),
  );
}
