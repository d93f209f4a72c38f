import { describe, expect, test } from 'vitest';
import type { Book, Product, Property, Rig, Round, Treatment, WeatherDay } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { sampleBook } from '../../../support/samples.ts';
import { naiveJudge } from '../naive/naive-judge.ts';

const sample = sampleBook('residential-day');
const [spring] = sample.rounds as readonly [Round];
const ON = '2027-03-16';
const HOUR_MS = 3_600_000;

/** Every second lawn of the first four gets another treatment, with a product of its own. Rates are invented, not for use. */
const spray = sample.treatments.find((each) => each.kind === 'spray') as Extract<Treatment, { kind: 'spray' }>;
const mix = sample.mixes.find((each) => each.id === spray.mixId) as Book['mixes'][number];
const product = (id: string, label: Partial<Product['label']>): Product => ({
  ...(sample.products.find((each) => each.id === mix.parts[0]?.productId) as Product),
  id,
  name: id,
  label: { note: '', registration: '', needsAgitation: false, ...label },
});
const lawns = sample.properties.slice(0, 4).map((each, at): Property => {
  const tags = [at % 2 === 0 ? 'one' : 'two'];
  return { ...each, tags, zones: each.zones.map((zone) => ({ ...zone, tags })) };
});

function bookWith(one: Partial<Product['label']>, two: Partial<Product['label']>, hours: WeatherDay['hours']): Book {
  const names = ['one', 'two'] as const;
  return {
    ...sample,
    properties: lawns,
    products: [product('one', one), product('two', two)],
    mixes: names.map((id) => ({ ...mix, id, name: id, parts: [{ productId: id, amountPer1000SqFt: 0.5 }] })),
    treatments: names.map((id) => ({ ...spray, id, name: id, mixId: id })),
    weather: [{ id: ON, on: ON, source: '', hours }],
    rounds: [
      {
        ...spring,
        dates: [ON],
        treatmentIds: [...names],
        only: names.map((id) => ({ treatmentId: id, choice: { tags: [id] } })),
      },
    ],
  };
}

function planned(book: Book): { readonly problem: Problem; readonly plan: Plan } {
  const built = buildProblem(book, spring.id);
  if (!built.ok) throw new Error(built.error.detail);
  const problem = built.value;
  const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 20 }));
  expect(judgePlan(problem, plan).violations).toEqual([]);
  expect(naiveJudge(problem, plan).faults).toEqual([]);
  return { problem, plan };
}

/** Earliest set-up and latest end of treating over the lawns with a tag, hours after midnight. */
function spanOf({ days }: Plan, tag: string): readonly [number, number] {
  const own = new Set(lawns.flatMap((each) => ((each.tags ?? []).includes(tag) ? [each.id] : [])));
  const done = days.flatMap((day) => day.activities.filter((each) => 'propertyId' in each && own.has(each.propertyId)));
  const starts = done.flatMap((each) => (each.kind === 'set-up' ? [each.startSec] : []));
  const ends = done.flatMap((each) => (each.kind === 'treat' ? [each.endSec] : []));
  expect(starts.length).toBeGreaterThan(0);
  return [Math.min(...starts) / 3600, Math.max(...ends) / 3600];
}

const wind = (from: number, to: number): WeatherDay['hours'] =>
  Array.from({ length: 24 }, (_, hour) => ({ hour, windMph: hour >= from && hour < to ? 18 : 5 }));

describe('closed hours of a day that is worked', () => {
  const startHour = ((sample.rigs[0] as Rig).shiftStartMin ?? 0) / 60;

  test('have nothing treated in them: a day with an open morning', () => {
    const { problem, plan } = planned(bookWith({ mostWindMph: 10 }, { mostWindMph: 12 }, wind(12, 24)));
    expect(problem.jobs.every((each) => each.treatHours?.[0]?.closeMs === 12 * HOUR_MS)).toBe(true);
    for (const tag of ['one', 'two']) expect(spanOf(plan, tag)[1]).toBeLessThanOrEqual(12);
    expect(plan.issues.filter((each) => each.code === 'weather-limits').map((each) => each.message)).toEqual([
      expect.stringMatching(/to one: 12:00 pm to .* planned to 12:00 pm\.$/),
      expect.stringMatching(/to two: 12:00 pm to .* planned to 12:00 pm\.$/),
    ]);
  });

  test('are waited for: a day with an open afternoon', () => {
    const { plan } = planned(bookWith({ mostWindMph: 10 }, { mostWindMph: 10 }, wind(0, 11)));
    for (const tag of ['one', 'two']) expect(spanOf(plan, tag)[0]).toBeGreaterThanOrEqual(11);
  });

  test('bind only the lawns that get the product: two products with different limits in one day', () => {
    const { problem, plan } = planned(bookWith({ mostWindMph: 10 }, { mostWindMph: 20 }, wind(0, 11)));
    expect(problem.slots).toHaveLength(problem.rigs.length);
    expect(spanOf(plan, 'one')[0]).toBeGreaterThanOrEqual(11);
    expect(spanOf(plan, 'two')[0]).toBeLessThan(startHour + 2);
    expect(plan.unplaced).toEqual([]);
  });

  test('close the day to one product alone where they are too many, with the reason', () => {
    const { problem, plan } = planned(bookWith({ mostWindMph: 10 }, {}, wind(9, 24)));
    expect(new Set(plan.unplaced.map((each) => each.treatmentId))).toEqual(new Set(['one']));
    expect(plan.unplaced[0]?.reasons[0]?.words).toMatch(/weather leaves no 4 h in a row open/);
    expect(problem.jobs.filter((each) => each.dayAllowed[0] === 1).every((each) => each.treatHours === undefined)).toBe(
      true,
    );
  });

  test('are told as the reason where they alone leave no room', () => {
    const book = bookWith({ mostWindMph: 10 }, {}, wind(11, 24));
    // Every lawn with the bound product takes hours, so that the morning holds one of the two.
    const stated = (areaSqFt: number) => ({ kind: 'stated', areaSqFt, method: 'invented' }) as const;
    const properties = book.properties.map((each) => ({
      ...each,
      hours: { openMin: 0, closeMin: 1440 },
      zones: each.zones
        .slice(0, 1)
        .map((zone) => ({ ...zone, shape: stated(each.tags?.includes('one') === true ? 180_000 : 5000) })),
    }));
    const { plan } = planned({ ...book, properties } as unknown as Book);
    const reasons = plan.unplaced.filter((each) => each.treatmentId === 'one').flatMap((each) => each.reasons);
    expect(reasons.map((each) => each.code)).toContain('weather-closed');
    expect(reasons[0]?.words).toMatch(/^would fit on 2027-03-16 but for the hours that weather closes: 11:00 am to/);
  });

  test.each([
    ['wind at the limit and a tenth above it', { mostWindMph: 10 }, { windMph: 10 }, { windMph: 10.1 }],
    ['cold at the limit and a tenth below it', { leastAirF: 50 }, { airF: 50 }, { airF: 49.9 }],
    ['heat at the limit and a tenth above it', { mostAirF: 85 }, { airF: 85 }, { airF: 85.1 }],
    ['no rain and a trace of it', { dryHours: 0 }, { rainIn: 0 }, { rainIn: 0.01 }],
  ])('%s', (_, label, open, shut) => {
    const at = (read: object) => {
      const built = buildProblem(bookWith(label, label, [{ hour: 14, ...read }]), spring.id);
      if (!built.ok) throw new Error(built.error.detail);
      return built.value.jobs.map((each) => each.treatHours?.[0]?.closeMs ?? null);
    };
    expect(new Set(at(open))).toEqual(new Set([null]));
    expect(new Set(at(shut))).toEqual(new Set([14 * HOUR_MS]));
  });

  test('make a plan out of date when they change, and are in no problem without weather', () => {
    const hash = (hours: WeatherDay['hours']) => {
      const built = buildProblem(bookWith({ mostWindMph: 10 }, {}, hours), spring.id);
      return built.ok ? built.value.hash : '';
    };
    expect(hash(wind(12, 24))).not.toBe(hash(wind(13, 24)));
    expect(hash(wind(0, 0))).toBe(hash([]));
  });
});
