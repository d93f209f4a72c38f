import { type Book, emptyBook, type TemperatureYear, type Timing } from '../../../../core/book/index.ts';
import { addDays, dayNumber } from '../../../../core/units/index.ts';

type Figures = readonly [max: number | null, min: number | null, soil: number | null];

/** A book with daily temperatures of one station from one date to another, by a rule; null leaves a day out. */
export function bookWith(from: string, to: string, rule: (date: string) => Figures | null, station = 'Yard'): Book {
  const years = new Map<string, TemperatureYear['days'][number][]>();
  for (let date = from; date <= to; date = addDays(date, 1)) {
    const figures = rule(date);
    if (figures === null) continue;
    const year = date.slice(0, 4);
    const days = years.get(year) ?? [];
    years.set(year, days);
    days.push([date, ...figures]);
  }
  const temperatures = [...years].map(([year, days]) => ({ id: `${station}-${year}`, station, source: '', days }));
  return { ...emptyBook('b', 'Temperatures'), temperatures };
}

/** A swing of so much round a mean over 365 days, F, upwards through the mean on 20 April of every common year. */
export function swing(mean: number, size: number): (date: string) => number {
  const zero = dayNumber('2027-04-20');
  return (date) => mean + size * Math.sin((2 * Math.PI * (dayNumber(date) - zero)) / 365);
}

export function soilTiming(
  figures: Partial<Extract<Timing, { kind: 'soil-temperature' }>> = {},
): Extract<Timing, { kind: 'soil-temperature' }> {
  return {
    id: 't',
    name: 'Soil',
    source: 'a source',
    kind: 'soil-temperature',
    depthIn: 2,
    course: 'rising',
    meanOfDays: 1,
    forDays: 1,
    from: '02-01',
    smoothDays: 7,
    gapDays: 3,
    closesAtF: 60,
    ...figures,
  };
}

export function countTiming(
  figures: Partial<Extract<Timing, { kind: 'degree-days' }>> = {},
): Extract<Timing, { kind: 'degree-days' }> {
  return {
    id: 't',
    name: 'Count',
    source: 'a source',
    kind: 'degree-days',
    baseF: 50,
    from: '03-01',
    smoothDays: 7,
    gapDays: 3,
    opensAt: 100,
    closesAt: 200,
    ...figures,
  };
}
