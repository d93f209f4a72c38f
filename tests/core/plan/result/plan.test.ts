import { describe, expect, test } from 'vitest';
import { explainPlan, notReachedSqFt, type Plan, readPlan, writePlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

function planOf(name: 'residential-day' | 'mixed-day'): Plan {
  const book = sampleBook(name);
  const problem = problemOf(book);
  return explainPlan(book, problem, solve(problem, { seed: 3, iterations: 400 }));
}

type Morning = Extract<Plan['days'][number]['activities'][number], { readonly kind: 'morning' }>;

function morningStock(day: Plan['days'][number]): Morning['stock'] {
  return day.activities.find((each): each is Morning => each.kind === 'morning')?.stock ?? [];
}

/** What is put into the bag places of machines in the morning. */
function bagsOnMachines(day: Plan['days'][number]): Morning['fills'] {
  const morning = day.activities.find((each): each is Morning => each.kind === 'morning');
  return morning?.fills.filter((each) => each.compartmentId.endsWith('/bags')) ?? [];
}

const plans = { 'residential-day': planOf('residential-day'), 'mixed-day': planOf('mixed-day') };

describe.each(Object.entries(plans))('the plan of %s', (_name, plan) => {
  test('reads back as it was written', () => {
    expect(readPlan(writePlan(plan), 'plan.json')).toEqual({ ok: true, value: JSON.parse(JSON.stringify(plan)) });
  });

  test('has no gap between one activity and the next, and ends when the day ends', () => {
    for (const day of plan.days) {
      expect(day.activities[0]?.startSec).toBe(day.startSec);
      expect(day.activities.at(-1)?.endSec).toBeCloseTo(day.endSec, 6);
      day.activities.slice(1).forEach((each, index) => {
        expect(each.startSec).toBeCloseTo(day.activities[index]?.endSec ?? -1, 6);
      });
    }
  });

  test('draws levels that stay between empty and full and end where the day ends', () => {
    for (const line of plan.days.flatMap((day) => day.levels)) {
      for (const [, level] of line.points) {
        expect(level, line.label).toBeGreaterThanOrEqual(0);
        expect(level, line.label).toBeLessThanOrEqual(line.capacity);
      }
      const times = line.points.map(([time]) => time);
      expect(times).toEqual([...times].sort((left, right) => left - right));
    }
  });

  test('covers every task with numbered loads that really cover it', () => {
    for (const day of plan.days) {
      expect(day.loads.map((load) => load.number)).toEqual(day.loads.map((_, index) => index + 1));
      for (const task of day.stops.flatMap((stop) => stop.tasks)) {
        const loads = day.loads.filter((load) => task.loadNumbers.includes(load.number));
        const covered = loads
          .flatMap((load) => load.covers)
          .filter(
            (each) =>
              each.propertyId === task.propertyId &&
              each.zoneId === task.zoneId &&
              each.treatmentId === task.treatmentId,
          );
        // A hand trim out of the machine's own loads is ground of the same work.
        const same = day.stops
          .flatMap((stop) => stop.tasks)
          .filter(
            (each) =>
              each.propertyId === task.propertyId &&
              each.zoneId === task.zoneId &&
              each.treatmentId === task.treatmentId &&
              each.loadNumbers.some((number) => task.loadNumbers.includes(number)),
          );
        // What the machine does not reach gets nothing out of any load.
        const areaSqFt = same.reduce((sum, each) => sum + each.areaSqFt - notReachedSqFt(each), 0);
        expect(covered.reduce((sum, each) => sum + each.areaSqFt, 0)).toBeCloseTo(areaSqFt, 6);
      }
    }
  });

  test('carries in the morning no more than the payload, with dry stock counted by the pound', () => {
    for (const day of plan.days) {
      const others = day.carry.filter((each) => each.what !== 'bags').reduce((sum, each) => sum + each.weightLb, 0);
      const dry = [...morningStock(day), ...bagsOnMachines(day)];
      const dryLb = dry.reduce((sum, each) => sum + each.weightLb, 0);
      expect(others + dryLb).toBeLessThanOrEqual(day.payloadLb + 0.1);
    }
  });

  test('carries whole bags, each with the weight of a full one', () => {
    for (const day of plan.days) {
      const bags = day.carry.filter((each) => each.what === 'bags');
      // Every dry product of the samples comes in bags of 50 lb.
      expect(bags.map((each) => each.weightLb)).toEqual(bags.map((each) => each.amount * 50));
      const needed = morningStock(day).filter((each) => each.stock === 'dry');
      expect(bags.map((each) => each.amount)).toEqual(
        [...needed, ...bagsOnMachines(day)].map((each) => Math.ceil(each.weightLb / 50 - 1e-9)),
      );
      const sum = day.carry.reduce((total, each) => total + each.weightLb, 0);
      expect(Math.abs(day.carryWeightLb - sum)).toBeLessThanOrEqual(0.05 + 1e-9);
    }
  });

  test('puts as much product into loads as the ground asks for', () => {
    for (const load of plan.days.flatMap((day) => day.loads).filter((each) => each.kind === 'tank')) {
      // 0.45 fl oz in 0.5 gal, from the invented mix of the samples.
      expect(load.products[0]?.amount).toBeCloseTo(load.volumeGal * 0.9, 6);
    }
  });

  test('says why each load is as large as it is, and leaves nothing of any mix', () => {
    for (const day of plan.days) {
      day.loads.forEach((load, at) => {
        const next = day.loads.slice(at + 1).find((each) => each.compartmentId === load.compartmentId);
        const last = next === undefined || next.materialId !== load.materialId || next.sumpGal > 0;
        expect(load.why).toMatch(
          last ? /^Made to measure: .* nothing is left over\.$/ : /^(Filled|As much) .* load \d+/,
        );
        if (last) expect(load.leftGal + load.leftLb).toBe(0);
      });
      expect(day.leftOver).toEqual([]);
    }
  });

  test('fills what lies below the reach of a pump once for each mix in a tank', () => {
    for (const day of plan.days) {
      const first = new Map(day.loads.toReversed().map((load) => [`${load.compartmentId} ${load.materialId}`, load]));
      for (const load of day.loads) {
        const sumps = { 'ride-on-49/left+right': 1, 'stand-on-35/tank': 0.5 };
        const sump = Object.entries(sumps).find(([id]) => id === load.compartmentId)?.[1] ?? load.sumpGal;
        const isFirst = first.get(`${load.compartmentId} ${load.materialId}`) === load;
        expect(load.sumpGal).toBe(isFirst ? sump : 0);
      }
    }
  });

  test('gives a reason in words for each refill and each choice of method', () => {
    for (const day of plan.days) {
      for (const each of day.activities)
        if (each.kind === 'refill') expect(each.reason).toMatch(/ (before|after) .*\.$/);
      for (const { handTrim, why } of day.stops.flatMap((stop) => stop.tasks)) {
        expect(why).toMatch(handTrim === true ? / does not reach, in \d/ : / takes \d/);
      }
    }
  });

  test('arrives at each stop after it left the one before', () => {
    for (const day of plan.days) {
      day.stops.slice(1).forEach((stop, index) => {
        expect(stop.arriveSec).toBeGreaterThanOrEqual(day.stops[index]?.leaveSec ?? Number.POSITIVE_INFINITY);
        expect(stop.leaveSec).toBeGreaterThan(stop.arriveSec);
      });
    }
  });
});

test('a refill falls in the middle of the sports ground, and a hopper is filled more than once', () => {
  const refills = plans['mixed-day'].days.flatMap((day) => day.activities).filter((each) => each.kind === 'refill');
  expect(refills.some((each) => each.propertyId === 'sports-ground' && each.afterSqFt > 0)).toBe(true);
  expect(
    plans['mixed-day'].days.flatMap((day) => day.loads).filter((load) => load.compartmentId === 'ride-on-49/hopper')
      .length,
  ).toBeGreaterThan(1);
});

test('a day that cannot hold everything lists what is left with the reason', () => {
  const book = sampleBook('residential-day');
  const short = { ...book, rigs: book.rigs.map((rig) => ({ ...rig, shiftMin: 240, overtimeMin: 0 })) };
  const problem = problemOf(short);
  const plan = explainPlan(short, problem, solve(problem, { seed: 3, iterations: 300 }));
  expect(plan.totals.stops).toBeGreaterThan(5);
  expect(plan.totals.stops + new Set(plan.unplaced.map((each) => each.propertyId)).size).toBe(28);
  expect(plan.unplaced.some((each) => each.reasons[0]?.code === 'no-time-left')).toBe(true);
  for (const each of plan.unplaced) expect(each.reasons[0]?.words).not.toBe('');
});

describe('a file that is no plan is refused', () => {
  const good = JSON.parse(writePlan(plans['mixed-day'])) as Record<string, unknown>;
  test.each([
    ['no JSON', '{"format":', 'not-json'],
    ['something else', '{"format":"other","version":1}', 'not-a-plan'],
    ['a later version', JSON.stringify({ ...good, version: 2 }), 'newer-version'],
    ['a wrong member', JSON.stringify({ ...good, days: 'none' }), 'wrong-schema'],
  ])('%s', (_name, text, code) => {
    expect(readPlan(text, 'plan.json')).toMatchObject({ ok: false, error: { code } });
  });
});

test('the plan of mixed-day has bags to carry', () => {
  expect(plans['mixed-day'].days.flatMap((day) => day.carry.filter((each) => each.what === 'bags'))).not.toEqual([]);
});
