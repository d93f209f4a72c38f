import { describe, expect, test } from 'vitest';
import type { Book, Product, Rig, WeatherDay } from '../../../../core/book/index.ts';
import { keptIn, weatherAsked } from '../../../../core/round/calendar/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const ON = '2027-04-05';
/** 8 am to 4 pm, and an hour of overtime. */
const rig = { ...(sample.rigs[0] as Rig), shiftStartMin: 480, shiftMin: 480, overtimeMin: 60 };
const product = (id: string, label: Partial<Product['label']>): Product => ({
  ...(sample.products[0] as Product),
  id,
  name: id,
  label: { note: '', registration: '', needsAgitation: false, ...label },
});
const calm = product('calm', { mostWindMph: 10 });
const dry = product('dry', { dryHours: 2 });

function stretchOf(hours: WeatherDay['hours'], products: readonly Product[], rigs: readonly Rig[] = [rig], on = ON) {
  const book: Book = { ...sample, weather: [{ id: on, on, source: '', hours }] };
  return weatherAsked(book, [on], rigs)(products)?.stretches[0] ?? null;
}

const windy = (...hours: readonly number[]): WeatherDay['hours'] =>
  Array.from({ length: 24 }, (_, hour) => ({ hour, windMph: hours.includes(hour) ? 11 : 10 }));

describe('the hours that weather leaves to a work', () => {
  test('are all where nothing is closed, and where the products have no limit', () => {
    expect(stretchOf(windy(), [calm])).toBeNull();
    expect(stretchOf(windy(9), [product('any', {})])).toBeNull();
    expect(stretchOf(windy(7, 17), [calm])).toBeNull();
  });

  test('end or begin with a closed hour, and have no end where the last hour is open', () => {
    expect(stretchOf(windy(13, 14, 15, 16), [calm])).toMatchObject({ toMin: 780, isOneOfSeveral: false });
    expect(stretchOf(windy(13, 14, 15, 16), [calm])).not.toHaveProperty('fromMin');
    expect(stretchOf(windy(8, 9), [calm])).toMatchObject({ fromMin: 600 });
    expect(stretchOf(windy(8, 9), [calm])).not.toHaveProperty('toMin');
    // Overtime to 5 pm counts.
    expect(stretchOf(windy(16), [calm])).toMatchObject({ toMin: 960 });
  });

  test('are the longest of several, of two as long the first', () => {
    expect(stretchOf(windy(10), [calm])).toMatchObject({ fromMin: 660, isOneOfSeveral: true });
    // 8 to 12 and 1 to 5.
    expect(stretchOf(windy(12), [calm])).toMatchObject({ toMin: 720, isOneOfSeveral: true });
    expect(stretchOf(windy(8, 9, 10, 11, 12, 13, 14, 15, 16), [calm])).toMatchObject({ fromMin: 480, toMin: 480 });
  });

  test('are those of the tightest limits of all products of the work', () => {
    const hours = windy(8).map((each) => (each.hour === 16 ? { ...each, rainIn: 0.1 } : each));
    expect(stretchOf(hours, [calm])).toMatchObject({ fromMin: 540 });
    // Rain at 4 pm closes the two hours before it.
    expect(stretchOf(hours, [dry])).toMatchObject({ toMin: 840 });
    expect(stretchOf(hours, [calm, dry])).toMatchObject({ fromMin: 540, toMin: 840 });
  });

  test('count for the shifts of all rigs together', () => {
    const late = { ...rig, id: 'late', shiftStartMin: 780, shiftMin: 360, overtimeMin: 0 };
    // 8 am to 7 pm, closed from 9 to 12: 12 to 7 is longer than 8 to 9.
    expect(stretchOf(windy(9, 10, 11), [calm], [rig, late])).toMatchObject({ fromMin: 720, isOneOfSeveral: true });
  });

  test('count real minutes from the start of the shift where the clock is changed in it', () => {
    // From 1 am on the morning of 14 March 2027; the clock has no 2 am. 4 am by the clock is two real hours later.
    const night = { ...rig, shiftStartMin: 60, shiftMin: 480, overtimeMin: 0 };
    expect(stretchOf(windy(1, 3), [calm], [night], '2027-03-14')).toMatchObject({ fromMin: 180 });
  });
});

test('a rig stays in where every treatment of the round is closed for too long, and not where one is open', () => {
  const products = sample.products.map((each, at) => ({
    ...each,
    unit: 'lb' as const,
    label: { ...each.label, ...(at === 0 ? { mostWindMph: 10 } : {}) },
  }));
  const spread = (id: string, productId: string) => ({
    ...(sample.treatments[0] as Book['treatments'][number]),
    id,
    kind: 'spread' as const,
    productId,
    rate: { kind: 'product' as const, lbPer1000SqFt: 3 },
  });
  const treatments = [spread('bound', products[0]?.id ?? ''), spread('free', products[1]?.id ?? '')];
  const weather = [{ id: ON, on: ON, source: '', hours: windy(10, 11, 12, 13, 14) }];
  const book = { ...sample, products, treatments, weather } as Book;
  expect(keptIn(book, { treatmentIds: ['bound'] }, [ON], [rig])).toEqual([[true]]);
  expect(keptIn(book, { treatmentIds: ['free'] }, [ON], [rig])).toEqual([[false]]);
  expect(keptIn(book, { treatmentIds: ['bound', 'free'] }, [ON], [rig])).toEqual([[false]]);
});
