import type { Book, Rig, Round } from '../../book/index.ts';
import { shiftOnClock } from './clock.ts';
import { productsOf, type ShiftWeather, shiftWeather, weatherLimits, weatherTable } from './weather.ts';
import { calendarOf } from './working-days.ts';

/**
 * What weather does to the shifts of rigs on some days, by the tightest limits of a round's products.
 *
 * @returns [day][rig]; null where the book has no weather or the products have no limits
 */
export function roundWeather(
  book: Book,
  round: Pick<Round, 'treatmentIds'>,
  dates: readonly string[],
  rigs: readonly Rig[],
): readonly (readonly ShiftWeather[])[] | null {
  const limits = weatherLimits(productsOf(book, round));
  if (limits.length === 0 || book.weather.length === 0) return null;
  const { clockChange, leastOpenMin } = calendarOf(book);
  const table = weatherTable(book.weather);
  return dates.map((date) =>
    rigs.map((rig) => {
      const shift = shiftOnClock(date, rig.shiftStartMin, rig.shiftMin, clockChange);
      return shiftWeather(limits, table, shift, leastOpenMin);
    }),
  );
}
