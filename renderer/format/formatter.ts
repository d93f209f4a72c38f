import {
  asRead,
  type Clock,
  type DateOrder,
  formatArea,
  formatClock,
  formatDate,
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
  type ProductUnit,
  type Reading,
  type UnitSystem,
} from '../../core/units/index.ts';
import { todayHere } from './today.ts';

/** Puts figures into words in the units that the user reads. */
export type Formatter = {
  readonly system: UnitSystem;
  readonly dates: DateOrder;
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
  /** A date that may be of another year. */
  readonly dateInYear: (date: string) => string;
  /** The time of an ISO 8601 moment on this machine's clock; '' where it is none. */
  readonly timeOf: (moment: string) => string;
  /** An ISO 8601 moment on this machine's calendar and clock. */
  readonly moment: (moment: string) => string;
  /** A sentence that core wrote, in US units and with dates in figures, as it is read. */
  readonly said: (text: string) => string;
};

/** @param names those that hold a quantity and stay as they are in sentences */
export function formatterFor(reading: Reading, names: () => readonly string[] = () => []): Formatter {
  const { units: system, clock, dates } = reading;
  return {
    system,
    dates,
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
    clock: (sec) => formatClock(sec, clock),
    duration: formatDuration,
    money: formatMoney,
    number: formatNumber,
    date: (date) => formatDate(date, 'short', dates),
    longDate: (date) => formatDate(date, 'long', dates),
    dateInYear: (date) => formatDate(date, 'table', dates),
    timeOf: (moment) => {
      const when = new Date(moment);
      return Number.isNaN(when.getTime()) ? '' : clockOf(when, clock);
    },
    moment: (moment) => momentWords(moment, reading),
    said: (text) => asRead(text, reading, names()),
  };
}

/** "Tue Mar 16, 2027, 10:42 am" on this machine's calendar and clock from an ISO 8601 moment; '' where it is none. */
export function momentWords(moment: string, { clock, dates }: Pick<Reading, 'clock' | 'dates'>): string {
  const when = new Date(moment);
  return Number.isNaN(when.getTime()) ? '' : `${formatDate(todayHere(when), 'table', dates)}, ${clockOf(when, clock)}`;
}

function clockOf(when: Date, clock: Clock): string {
  return formatClock((when.getHours() * 60 + when.getMinutes()) * 60, clock);
}

/** "1 lawn", "26 lawns". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatNumber(count)} ${count === 1 ? one : many}`;
}
