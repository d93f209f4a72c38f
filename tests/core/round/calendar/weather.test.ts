import { describe, expect, test } from 'vitest';
import type { Product, WeatherDay } from '../../../../core/book/index.ts';
import {
  holdReason,
  shiftOnClock,
  shiftWeather,
  weatherLimits,
  weatherTable,
} from '../../../../core/round/calendar/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day').products[0] as Product;
const product = (name: string, label: Partial<Product['label']>): Product => ({
  ...sample,
  name,
  label: { note: '', registration: '', needsAgitation: false, ...label },
});
type Hour = WeatherDay['hours'][number];
const day = (on: string, hours: readonly Hour[]): WeatherDay => ({ id: on, on, source: '', hours });
const hours = (from: number, to: number, read: Omit<Hour, 'hour'>): readonly Hour[] =>
  Array.from({ length: to - from }, (_, index) => ({ hour: from + index, ...read }));
/** 8 am to 4 pm. */
const SHIFT = shiftOnClock('2027-04-05', 480, 480, 'united-states');
const asked = (labels: readonly Product[], weather: readonly WeatherDay[], leastOpenMin = 240, shift = SHIFT) =>
  shiftWeather(weatherLimits(labels), weatherTable(weather), shift, leastOpenMin);

describe('limits of labels', () => {
  test('are the tightest of each kind, with whose they are', () => {
    const limits = weatherLimits([
      product('A', { mostWindMph: 15, leastAirF: 40, mostAirF: 90, dryHours: 2 }),
      product('B', { mostWindMph: 10, leastAirF: 50, mostAirF: 85, dryHours: 24 }),
      product('C', {}),
    ]);
    expect(limits).toEqual([
      { what: 'wind', value: 10, productName: 'B' },
      { what: 'cold', value: 50, productName: 'B' },
      { what: 'heat', value: 85, productName: 'B' },
      { what: 'rain', value: 24, productName: 'B' },
    ]);
    expect(weatherLimits([product('C', {})])).toEqual([]);
  });
});

describe('a shift under weather', () => {
  test('is open at each limit and closed beyond it', () => {
    const label = product('A', { mostWindMph: 10, leastAirF: 40, mostAirF: 90 });
    const why = (read: Omit<Hour, 'hour'>): string =>
      asked([label], [day('2027-04-05', hours(0, 24, read))]).hours[0]?.why ?? '';
    expect(why({ windMph: 10, airF: 40 })).toBe('');
    expect(why({ windMph: 10, airF: 90 })).toBe('');
    expect(why({ windMph: 10.1 })).toBe('wind 10.1 mph (A: at most 10 mph)');
    expect(why({ airF: 39.9 })).toBe('air 39.9 °F (A: at least 40 °F)');
    expect(why({ airF: 91 })).toBe('air 91 °F (A: at most 90 °F)');
  });

  test('needs its dry hours after an hour’s end, over midnight too', () => {
    const rainAt = (on: string, hour: number): WeatherDay => day(on, [{ hour, rainIn: 0.1 }]);
    const open = (dryHours: number, rain: WeatherDay): number[] =>
      asked([product('A', { dryHours })], [rain])
        .hours.filter((each) => each.why === '')
        .map((each) => each.hour);
    // Rain from 2 pm: work that ends at noon has two dry hours, work that ends at 1 pm has one.
    expect(open(2, rainAt('2027-04-05', 14))).toEqual([8, 9, 10, 11, 15]);
    expect(open(1, rainAt('2027-04-05', 14))).toEqual([8, 9, 10, 11, 12, 15]);
    expect(open(1.5, rainAt('2027-04-05', 14))).toEqual([8, 9, 10, 11, 15]);
    // Rain from 1 am of the next day, nine hours after 4 pm.
    expect(open(9, rainAt('2027-04-06', 1))).toEqual([8, 9, 10, 11, 12, 13, 14, 15]);
    expect(open(10, rainAt('2027-04-06', 1))).toEqual([8, 9, 10, 11, 12, 13, 14]);
  });

  test('is on hold where the longest open stretch is shorter than asked for', () => {
    const label = product('A', { mostWindMph: 10 });
    const windFrom = (hour: number) => [
      day('2027-04-05', [...hours(0, hour, { windMph: 5 }), ...hours(hour, 24, { windMph: 14 })]),
    ];
    const noon = asked([label], windFrom(12));
    expect([noon.openMin, noon.isHeld]).toEqual([240, false]);
    const eleven = asked([label], windFrom(11));
    expect([eleven.openMin, eleven.isHeld]).toEqual([180, true]);
    expect(holdReason(eleven, 240)).toBe(
      'weather leaves no 4 h in a row open: 11:00 am to 4:00 pm: wind 14 mph (A: at most 10 mph)',
    );
    // A shift of two hours cannot have four open ones: the whole of it is enough.
    const short = shiftOnClock('2027-04-05', 480, 120, 'united-states');
    expect(asked([label], windFrom(10), 240, short).isHeld).toBe(false);
    expect(asked([label], windFrom(9), 240, short).isHeld).toBe(true);
  });

  test('counts parts of hours at its ends', () => {
    const shift = shiftOnClock('2027-04-05', 450, 300, 'united-states');
    const found = asked(
      [product('A', { mostWindMph: 10 })],
      [day('2027-04-05', [{ hour: 12, windMph: 20 }])],
      240,
      shift,
    );
    // 7:30 to 12:30; noon is closed, so 4 h 30 min are open.
    expect(found.openMin).toBe(270);
    expect(found.words).toBe('12:00 pm to 12:30 pm: wind 20 mph (A: at most 10 mph)');
  });

  test('is closed by nothing that was not read, and without any reading never on hold', () => {
    expect(asked([product('A', { mostWindMph: 10, dryHours: 4 })], [])).toMatchObject({ openMin: 480, isHeld: false });
    expect(asked([product('A', { mostWindMph: 10 })], [day('2027-04-05', hours(8, 16, { airF: 99 }))]).isHeld).toBe(
      false,
    );
  });

  test('in the night when clocks go forward asks the hours that the clock shows', () => {
    // 10 pm to 7 am by the clock, eight real hours; the hour from 2 to 3 am does not exist.
    const shift = shiftOnClock('2027-03-13', 1320, 480, 'united-states');
    const wind = [day('2027-03-14', hours(0, 7, { windMph: 20 }))];
    const found = asked([product('A', { mostWindMph: 10 })], wind, 240, shift);
    expect(found.hours.map((each) => each.hour)).toEqual([22, 23, 0, 1, 3, 4, 5, 6]);
    expect([found.openMin, found.isHeld]).toEqual([120, true]);
  });

  test('takes the later of two records of one day', () => {
    const two = [
      day('2027-04-05', hours(0, 24, { windMph: 20 })),
      { ...day('2027-04-05', hours(0, 24, { windMph: 4 })), id: 'b' },
    ];
    expect(asked([product('A', { mostWindMph: 10 })], two).words).toBe('');
  });
});
