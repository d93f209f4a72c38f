import { err, ok, type Result } from '../../core/base/index.ts';
import {
  decimalComma,
  formatBearing,
  formatShare,
  formatSlope,
  parseArea,
  parseBearing,
  parseCarrierRate,
  parseClock,
  parseDegreeDays,
  parseDuration,
  parseFlow,
  parseLength,
  parseMoney,
  parseShare,
  parseSlope,
  parseSpeed,
  parseTemperature,
  parseTemperatureDifference,
  parseVolume,
  parseWeight,
  parseWidth,
} from '../../core/units/index.ts';
import type { Formatter } from '../format/index.ts';
import { formatNumber } from '../format/index.ts';
import { useFormat } from '../stores/index.ts';
import { uiWords } from '../texts/index.ts';
import { DraftInput } from './draft-input.tsx';

/** Kinds of figures that can be typed. `minutes` is a span in minutes, `clock` a time of day in minutes after midnight. */
export type QuantityKind =
  | 'area'
  | 'length'
  | 'width'
  | 'volume'
  | 'weight'
  | 'speed'
  | 'flow'
  | 'carrier'
  | 'slope'
  | 'share'
  | 'minutes'
  | 'clock'
  | 'money'
  | 'number'
  | 'fine-number'
  | 'whole'
  | 'degrees'
  | 'bearing'
  | 'temperature'
  | 'temperature-difference'
  | 'degree-days';

/** Figures that may be below zero. */
const SIGNED: readonly QuantityKind[] = ['degrees', 'temperature', 'temperature-difference'];

type Reader = {
  readonly parse: (text: string, where: string) => Result<number>;
  readonly format: (value: number, words: Formatter) => string;
  /** Unit that a bare number gets where metric units are shown. */
  readonly metricUnit?: string;
};

const READERS: Readonly<Record<QuantityKind, Reader>> = {
  area: { parse: (text, where) => parseArea(text, { where }), format: (v, w) => w.area(v), metricUnit: 'm2' },
  length: { parse: (text, where) => parseLength(text, { where }), format: (v, w) => w.length(v), metricUnit: 'm' },
  width: { parse: (text, where) => parseWidth(text, { where }), format: (v, w) => w.width(v), metricUnit: 'cm' },
  volume: { parse: (text, where) => parseVolume(text, { where }), format: (v, w) => w.volume(v), metricUnit: 'L' },
  weight: { parse: (text, where) => parseWeight(text, { where }), format: (v, w) => w.weight(v), metricUnit: 'kg' },
  speed: { parse: (text, where) => parseSpeed(text, { where }), format: (v, w) => w.speed(v), metricUnit: 'km/h' },
  flow: {
    parse: (text, where) => parseFlow(text, { where }),
    format: (v, w) =>
      w.system === 'us'
        ? uiWords.quantityInput.gallonsPerMinute(trim(v))
        : uiWords.quantityInput.perMinute(w.volume(v)),
    metricUnit: 'L/min',
  },
  carrier: {
    parse: (text, where) => parseCarrierRate(text, { where }),
    format: (v, w) => w.rate(v),
    metricUnit: 'L/100 m2',
  },
  slope: { parse: (text, where) => parseSlope(text, where), format: (v) => formatSlope(v) },
  share: { parse: (text, where) => parseShare(text, where), format: (v) => formatShare(v) },
  minutes: { parse: minutesFrom, format: (v) => uiWords.quantityInput.minutes(trim(v)) },
  clock: { parse: clockFrom, format: (v, w) => w.clock(v * 60) },
  money: { parse: (text, where) => parseMoney(text, where), format: (v, w) => w.money(v) },
  number: { parse: numberFrom, format: (v) => trim(v) },
  'fine-number': { parse: numberFrom, format: (v) => String(Number(v.toPrecision(FINE_FIGURES))) },
  whole: { parse: wholeFrom, format: (v) => trim(v) },
  bearing: { parse: (text, where) => parseBearing(text, where), format: (v) => formatBearing(v) },
  degrees: { parse: degreesFrom, format: (v) => formatNumber(v, 6) },
  temperature: {
    parse: (text, where) => parseTemperature(text, where),
    format: (v, w) => w.temperature(v),
    metricUnit: 'C',
  },
  'temperature-difference': {
    parse: (text, where) => parseTemperatureDifference(text, where),
    format: (v, w) => w.temperatureDifference(v),
    metricUnit: 'C',
  },
  'degree-days': {
    parse: (text, where) => parseDegreeDays(text, where),
    format: (v, w) => w.degreeDays(v),
    metricUnit: 'C',
  },
};

/** Figures of numbers that may be small: 0.03125. */
const FINE_FIGURES = 6;

/** Commas between groups of three figures. */
const THOUSANDS = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/;

function trim(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function minutesFrom(text: string, where: string): Result<number> {
  const seconds = parseDuration(/[a-z:]/i.test(text) ? text : `${text} min`, { where });
  return seconds.ok ? ok(seconds.value / 60) : seconds;
}

function clockFrom(text: string, where: string): Result<number> {
  const seconds = parseClock(text, where);
  return seconds.ok ? ok(seconds.value / 60) : seconds;
}

function numberFrom(text: string, where: string): Result<number> {
  // A comma that does not part thousands may be meant as a decimal sign: "0,25" must not become 25.
  if (text.includes(',') && !THOUSANDS.test(text)) return decimalComma(where, text);
  const value = Number(text.replace(/,/g, ''));
  return text !== '' && Number.isFinite(value)
    ? ok(value)
    : err('quantity-unreadable', where, uiWords.quantityInput.noNumber(text), uiWords.quantityInput.noNumberAdvice);
}

/** Longitude or latitude. */
function degreesFrom(text: string, where: string): Result<number> {
  const value = numberFrom(text, where);
  if (!value.ok || Math.abs(value.value) <= 180) return value;
  return err('quantity-out-of-range', where, uiWords.quantityInput.noDegrees, uiWords.quantityInput.noDegreesAdvice);
}

function wholeFrom(text: string, where: string): Result<number> {
  const value = numberFrom(text, where);
  if (!value.ok || (Number.isInteger(value.value) && value.value >= 0)) return value;
  return err('quantity-out-of-range', where, uiWords.quantityInput.notWhole, uiWords.quantityInput.notWholeAdvice);
}

/** Reads a typed figure into its canonical unit; a bare number is in the unit that is shown. */
export function readTyped(kind: QuantityKind, text: string, where: string, system: 'us' | 'metric'): Result<number> {
  const reader = READERS[kind];
  const bare = /^[-+]?[\d.,\s/]+$/.test(text);
  return reader.parse(
    bare && system === 'metric' && reader.metricUnit !== undefined ? `${text} ${reader.metricUnit}` : text,
    where,
  );
}

/** "690.0 lb" is shown as "690 lb" where it can be typed over; money has two cents' digits or none. */
export function tidyFigure(text: string): string {
  if (text.includes('$')) return text.replace(/\.00$/, '');
  return text.replace(/(\.\d*?)0+(?!\d)/, '$1').replace(/\.(?!\d)/, '');
}

type QuantityInputProps = {
  readonly kind: QuantityKind;
  readonly label: string;
  /** Null where nothing is set. */
  readonly value: number | null;
  /** Where true an empty text takes the figure away; else it is a fault. */
  readonly optional?: boolean;
  /** Where true, 0 is a fault. */
  readonly positive?: boolean;
  readonly most?: number;
  readonly onCommit: (value: number | null) => Result<unknown>;
};

/** A figure with its unit, typed as people write it: "1/2 ac", "34 in", "0.5 gal/1000". */
export function QuantityInput({ kind, label, value, optional, positive, most, onCommit }: QuantityInputProps) {
  const words = useFormat();
  const commit = (text: string): Result<unknown> => {
    if (text === '' && optional === true) return onCommit(null);
    const read = readTyped(kind, text, label, words.system);
    if (!read.ok) return read;
    if ((read.value < 0 && !SIGNED.includes(kind)) || (positive === true && read.value <= 0)) {
      return err(
        'quantity-out-of-range',
        label,
        uiWords.quantityInput.notPositive,
        uiWords.quantityInput.notPositiveAdvice,
      );
    }
    if (most !== undefined && read.value > most) {
      return err(
        'quantity-out-of-range',
        label,
        uiWords.quantityInput.tooLarge(most),
        uiWords.quantityInput.tooLargeAdvice,
      );
    }
    return onCommit(read.value);
  };
  return (
    <DraftInput
      label={label}
      align="right"
      text={value === null ? '' : tidyFigure(READERS[kind].format(value, words))}
      placeholder={optional === true ? uiWords.quantityInput.notSet : ''}
      onCommit={commit}
    />
  );
}
