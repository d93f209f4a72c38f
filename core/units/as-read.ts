import {
  FLUID_OUNCES_PER_GALLON,
  INCHES_PER_FOOT,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  OUNCES_PER_POUND,
  SQUARE_FEET_PER_ACRE,
} from './constants.ts';
import {
  formatArea,
  formatDistance,
  formatLargeArea,
  formatLength,
  formatSpeed,
  formatVolume,
  formatWeight,
  type UnitSystem,
} from './format.ts';
import { type DateOrder, formatDate } from './format-date.ts';
import { formatNumber, withoutTrailingZeros } from './format-number.ts';
import { formatProductAmount } from './format-product.ts';
import { type Clock, formatClock } from './format-time.ts';
import { formatTemperature } from './temperature.ts';

const FIGURE = String.raw`-?\d[\d,]*(?:\.\d+)?`;
/** Nothing of a word, a name or another figure stands before a quantity. */
const BEFORE = String.raw`(?<![\w.,#])`;
/** "in" is a word as well: it is inches only where a sentence could not go on with a place. */
const INCHES = 'in(?=$|[,;:.)]| \\(| to spare| wide| or less| or more| and | by )';
const AFTER = String.raw`(?![\w²])`;
const QUANTITY = new RegExp(
  `${BEFORE}(?:(${FIGURE}) gal (${FIGURE}) fl oz|(${FIGURE}) lb (${FIGURE}) oz|(${FIGURE}) ?(ft²|ft2|fl oz|gal/min|gal|lb|oz|ac|mph|mi|°F|ft|${INCHES}))${AFTER}`,
  'g',
);
const CLOCK = new RegExp(String.raw`${BEFORE}(\d{1,2}):(\d\d) (am|pm)\b`, 'g');
/** A date in figures; not a part of a longer name, nor of a moment such as 2027-03-11T07:30. */
const DATE = /(?<![\w.-])\d{4}-\d{2}-\d{2}(?![\w-])/g;

const HOURS_PER_HALF_DAY = 12;
const CENTIMETRES_PER_INCH = (METRES_PER_FOOT / INCHES_PER_FOOT) * 100;

/** How figures are read: in which units, by which clock, and whether the month or the day comes first. */
export type Reading = { readonly units: UnitSystem; readonly clock: Clock; readonly dates: DateOrder };

/**
 * A sentence of the program as it is read: "gate 34 in by 7:30 am on 2027-03-11" in metric units, by a clock of 24 hours and with the day
 * first gives "gate 86.4 cm by 7:30 on Thu 11 Mar 2027". Plans, checks and reasons are written, and stored, in US units, by a clock of
 * twelve hours and with dates in figures. Words are left alone, and so are the names in `names`, which may hold a unit themselves: "Hose
 * reel 200 ft".
 */
export function asRead(text: string, reading: Reading, names: readonly string[] = []): string {
  const told = names.filter((name) => name !== '' && text.includes(name));
  if (told.length === 0) return converted(text, reading);
  // Longer names first, as one may hold another. Every second part is a name.
  const longest = told.toSorted((left, right) => right.length - left.length).map(escaped);
  const parts = text.split(new RegExp(`(${longest.join('|')})`));
  return parts.map((part, at) => (at % 2 === 1 ? part : converted(part, reading))).join('');
}

function escaped(name: string): string {
  return name.replace(/[\\^$.*+?()[\]{}|]/g, String.raw`\$&`);
}

function converted(text: string, { units, clock, dates }: Reading): string {
  const dated = text.replace(DATE, (date) => formatDate(date, 'table', dates));
  const timed = clock === '12-hour' ? dated : dated.replace(CLOCK, by24Hours);
  return units === 'us' ? timed : inMetricUnits(timed);
}

function inMetricUnits(text: string): string {
  return text.replace(QUANTITY, (_, gal?: string, flOz?: string, lb?: string, oz?: string, figure = '', unit = '') => {
    if (gal !== undefined)
      return formatProductAmount(read(gal) * FLUID_OUNCES_PER_GALLON + read(flOz), 'fl-oz', 'metric');
    if (lb !== undefined) return formatProductAmount(read(lb) * OUNCES_PER_POUND + read(oz), 'oz', 'metric');
    return unit === 'in' ? centimetres(figure) : inMetric(read(figure), unit);
  });
}

/** One decimal more than the inches have, so that two widths that differ are not shown as equal. */
function centimetres(inches: string): string {
  const decimals = (inches.split('.')[1] ?? '').length + 1;
  return `${withoutTrailingZeros(formatNumber(read(inches) * CENTIMETRES_PER_INCH, decimals))} cm`;
}

function read(figure = '0'): number {
  return Number(figure.replaceAll(',', ''));
}

function by24Hours(_: string, hour: string, minute: string, half: string): string {
  const ofDay = (Number(hour) % HOURS_PER_HALF_DAY) + (half === 'pm' ? HOURS_PER_HALF_DAY : 0);
  return formatClock((ofDay * 60 + Number(minute)) * 60, '24-hour');
}

function inMetric(value: number, unit: string): string {
  switch (unit) {
    case 'ft²':
    case 'ft2':
      return formatArea(value, 'metric');
    case 'ac':
      return formatLargeArea(value * SQUARE_FEET_PER_ACRE, 'metric');
    case 'gal':
      return formatVolume(value, 'metric');
    case 'gal/min':
      return `${formatVolume(value, 'metric')}/min`;
    case 'fl oz':
      return formatProductAmount(value, 'fl-oz', 'metric');
    case 'oz':
      return formatProductAmount(value, 'oz', 'metric');
    case 'lb':
      // Amounts of products are small, weights of machines are not.
      return Math.abs(value) < 1 ? formatProductAmount(value, 'lb', 'metric') : formatWeight(value, 'metric');
    case 'mph':
      return formatSpeed(value, 'metric');
    case 'mi':
      return formatDistance(value * METRES_PER_MILE, 'metric');
    case '°F':
      return formatTemperature(value, 'metric');
    default:
      return formatLength(value, 'metric');
  }
}
