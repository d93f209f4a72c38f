import { MS_PER_DAY } from '../../units/index.ts';

/** Normal figures by the day of the year, from earlier years. */
export type NormalCurve = {
  /** The normal figure of a day, by its number, F; null where too few days around it were ever measured. */
  readonly at: (day: number) => number | null;
  /** The years it is made of, in order. */
  readonly years: readonly number[];
};

const SLOTS = 365;
const FIRST_OF_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/** 28 February: the measured 29th counts with it. */
const LAST_OF_FEBRUARY = 58;

/**
 * The normal curve of one series: for every day of the year the mean over the years in which it was measured, then the mean of these
 * over the day and `smoothDays` on each side, round the turn of the year. A 29 February that was measured counts with the 28th; the
 * curve's own 29th is the middle between the 28th and 1 March. A day has a normal figure where more than half of these
 * days were measured in some year.
 *
 * @param readings day numbers with figures, F
 * @param beforeYear only years before this one count
 * @param smoothDays days on each side
 */
export function normalCurve(
  readings: ReadonlyMap<number, number>,
  beforeYear: number,
  smoothDays: number,
): NormalCurve {
  const sums = new Float64Array(SLOTS);
  const counts = new Uint32Array(SLOTS);
  const years = new Set<number>();
  for (const [day, value] of readings) {
    const date = new Date(day * MS_PER_DAY);
    const year = date.getUTCFullYear();
    if (year >= beforeYear) continue;
    years.add(year);
    const slot = slotOf(date);
    sums[slot] = (sums[slot] ?? 0) + value;
    counts[slot] = (counts[slot] ?? 0) + 1;
  }
  const means = Array.from(sums, (sum, slot) => ((counts[slot] ?? 0) === 0 ? null : sum / (counts[slot] ?? 1)));
  const smooth = means.map((_, slot) => smoothed(means, slot, smoothDays));
  return {
    years: [...years].toSorted((left, right) => left - right),
    at: (day) => {
      const date = new Date(day * MS_PER_DAY);
      const slot = slotOf(date);
      const value = smooth[slot] ?? null;
      if (!isLeapDay(date)) return value;
      const next = smooth[slot + 1] ?? null;
      return value === null || next === null ? null : (value + next) / 2;
    },
  };
}

function slotOf(date: Date): number {
  if (isLeapDay(date)) return LAST_OF_FEBRUARY;
  return (FIRST_OF_MONTH[date.getUTCMonth()] ?? 0) + date.getUTCDate() - 1;
}

function isLeapDay(date: Date): boolean {
  return date.getUTCMonth() === 1 && date.getUTCDate() === 29;
}

function smoothed(means: readonly (number | null)[], slot: number, smoothDays: number): number | null {
  let sum = 0;
  let count = 0;
  for (let offset = -smoothDays; offset <= smoothDays; offset += 1) {
    const value = means[(slot + offset + SLOTS) % SLOTS] ?? null;
    if (value === null) continue;
    sum += value;
    count += 1;
  }
  return count > smoothDays ? sum / count : null;
}
