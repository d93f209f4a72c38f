import {
  formatArea,
  formatClock,
  formatDegreeDays,
  formatDistance,
  formatDuration,
  formatLargeArea,
  formatLength,
  formatMoney,
  formatNumber,
  formatProductAmount,
  formatProductRate,
  formatRate,
  formatSpeed,
  formatTemperature,
  formatTemperatureDifference,
  formatVolume,
  formatWeight,
  formatWidth,
  metricText,
  type ProductUnit,
  type UnitSystem,
} from '../../core/units/index.ts';

/** Puts figures into words in the units that the user reads. */
export type Formatter = {
  readonly system: UnitSystem;
  readonly area: (areaSqFt: number) => string;
  readonly largeArea: (areaSqFt: number) => string;
  readonly volume: (volumeGal: number) => string;
  readonly weight: (weightLb: number) => string;
  readonly length: (lengthFt: number) => string;
  readonly width: (widthIn: number) => string;
  readonly distance: (metres: number) => string;
  readonly speed: (speedMph: number) => string;
  readonly rate: (galPer1000SqFt: number) => string;
  readonly product: (amount: number, unit: ProductUnit) => string;
  readonly productRate: (amount: number, unit: ProductUnit) => string;
  readonly level: (level: number, unit: 'gal' | 'lb') => string;
  readonly temperature: (temperatureF: number) => string;
  readonly temperatureDifference: (differenceF: number) => string;
  readonly degreeDays: (degreeDaysF: number) => string;
  readonly clock: (sec: number) => string;
  readonly duration: (sec: number) => string;
  readonly money: (dollars: number) => string;
  readonly number: (value: number, decimals?: number) => string;
  readonly date: (date: string) => string;
  readonly longDate: (date: string) => string;
  /** A sentence that core wrote with its quantities in US units, in the units that are read. */
  readonly said: (text: string) => string;
};

/** @param names those that hold a quantity and stay as they are in sentences */
export function formatterFor(system: UnitSystem, names: () => readonly string[] = () => []): Formatter {
  return {
    system,
    area: (value) => formatArea(value, system),
    largeArea: (value) => formatLargeArea(value, system),
    volume: (value) => formatVolume(value, system),
    weight: (value) => formatWeight(value, system),
    length: (value) => formatLength(value, system),
    width: (value) => formatWidth(value, system),
    distance: (value) => formatDistance(value, system),
    speed: (value) => formatSpeed(value, system),
    rate: (value) => formatRate(value, system),
    product: (amount, unit) => formatProductAmount(amount, unit, system),
    productRate: (amount, unit) => formatProductRate(amount, unit, system),
    level: (level, unit) => (unit === 'gal' ? formatVolume(level, system) : formatWeight(level, system)),
    temperature: (value) => formatTemperature(value, system),
    temperatureDifference: (value) => formatTemperatureDifference(value, system),
    degreeDays: (value) => formatDegreeDays(value, system),
    clock: (sec) => formatClock(sec, system),
    duration: formatDuration,
    money: formatMoney,
    number: formatNumber,
    date: (date) => dateWords(date, 'short'),
    longDate: (date) => dateWords(date, 'long'),
    said: (text) => (system === 'us' ? text : metricText(text, names())),
  };
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** "Tue 16 Mar" or "Tuesday, 16 March 2027" from "2027-03-16"; the text itself where it is no date. */
export function dateWords(date: string, length: 'short' | 'long'): string {
  const day = new Date(`${date}T12:00:00Z`);
  const weekday = WEEKDAYS[day.getUTCDay()];
  const month = MONTHS[day.getUTCMonth()];
  if (weekday === undefined || month === undefined) return date;
  if (length === 'short') return `${weekday.slice(0, 3)} ${day.getUTCDate()} ${month.slice(0, 3)}`;
  return `${weekday}, ${day.getUTCDate()} ${month} ${day.getUTCFullYear()}`;
}

/** "10:42" on this machine's clock from an ISO 8601 moment. */
export function clockOf(moment: string): string {
  const when = new Date(moment);
  if (Number.isNaN(when.getTime())) return '';
  return `${when.getHours()}:${String(when.getMinutes()).padStart(2, '0')}`;
}

/** "1 lawn", "26 lawns". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatNumber(count)} ${count === 1 ? one : many}`;
}
