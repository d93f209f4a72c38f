import { type Issue, issue } from '../base/index.ts';
import type { TemperatureYear, Timing } from '../book/index.ts';
import { isCalendarDate } from '../units/index.ts';
import { named, type Rule } from './rule.ts';

/** Timings that can never open or close as they are meant, and temperatures in a muddle. */
export const timings: Rule = {
  code: 'timing-senseless',
  find: (book) => {
    const stations = new Set(book.temperatures.map((each) => each.station));
    const years = new Map<string, number>();
    for (const each of book.temperatures) years.set(yearOf(each), (years.get(yearOf(each)) ?? 0) + 1);
    return [
      ...book.timings.flatMap((timing) => [...order(timing), ...station(timing, stations)]),
      ...book.temperatures.flatMap((each) => [...days(each), ...twice(each, years)]),
    ];
  },
};

function senseless(where: string, message: string): Issue {
  return issue('warning', 'timing-senseless', where, message);
}

/** The thresholds in the order in which they are to be reached. */
function thresholds(timing: Timing): readonly number[] {
  if (timing.kind === 'calendar') return [];
  const { opens, best, closes } =
    timing.kind === 'degree-days'
      ? { opens: timing.opensAt, best: timing.bestAt, closes: timing.closesAt }
      : { opens: timing.opensAtF, best: timing.bestAtF, closes: timing.closesAtF };
  return [opens, best, closes].filter((each) => each !== undefined);
}

function order(timing: Timing): readonly Issue[] {
  const falls = timing.kind === 'soil-temperature' && timing.course === 'falling';
  const steps = thresholds(timing);
  const isInOrder = steps.every((each, index) => {
    const before = steps[index - 1];
    return before === undefined || (falls ? each < before : each > before);
  });
  if (isInOrder) return [];
  const way = falls ? 'from the highest to the lowest' : 'from the lowest to the highest';
  return [senseless(named('timing', timing), `Opening, best and closing have to go ${way}; correct the figures.`)];
}

function station(timing: Timing, stations: ReadonlySet<string>): readonly Issue[] {
  if (timing.kind === 'calendar' || timing.station === undefined || stations.has(timing.station)) return [];
  const message = `There are no temperatures of the station ${timing.station}; read them in, or choose another station.`;
  return [senseless(named('timing', timing), message)];
}

function yearOf({ station: name, days: [first] }: TemperatureYear): string {
  return `${first?.[0].slice(0, 4) ?? ''} ${name}`;
}

function twice(record: TemperatureYear, years: ReadonlyMap<string, number>): readonly Issue[] {
  if ((years.get(yearOf(record)) ?? 0) < 2) return [];
  return [senseless(whereOf(record), 'The year stands more than once; the later record counts. Remove one of them.')];
}

function days(record: TemperatureYear): readonly Issue[] {
  const { days: all } = record;
  const year = all[0]?.[0].slice(0, 4) ?? '';
  const stray = all.find(
    ([date], index) => !isCalendarDate(date) || !date.startsWith(year) || date <= (all[index - 1]?.[0] ?? ''),
  );
  const turned = all.find(([, max, min]) => max !== null && min !== null && max < min);
  return [
    ...(stray === undefined
      ? []
      : [senseless(whereOf(record), `The day ${stray[0]} is out of order, of another year, or in no calendar.`)]),
    ...(turned === undefined
      ? []
      : [senseless(whereOf(record), `On ${turned[0]} the highest temperature is below the lowest; correct the two.`)]),
  ];
}

function whereOf({ station: name, days: [first], id }: TemperatureYear): string {
  return `temperatures of ${name}, ${first?.[0].slice(0, 4) ?? id}`;
}
