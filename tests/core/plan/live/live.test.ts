import { describe, expect, test } from 'vitest';
import type { Gauge, Visit } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { dayNow, morningOf, underWayOf, usedAgainstPlan, visitAsPlanned } from '../../../../core/plan/live/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type LevelLine, type PlanDay } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const book = sampleBook('mixed-day');
const [round] = book.rounds;
const roundId = round?.id ?? '';
const problem = problemOf(book);
const plan = explainPlan(book, problem, solve(problem, { seed: 3, iterations: 300 }));
const [day] = plan.days as readonly [PlanDay, ...PlanDay[]];

const doneAsPlanned = (count: number): readonly Visit[] =>
  day.stops.slice(0, count).map((stop) => ({
    ...visitAsPlanned(book, `v${stop.number}`, roundId, day, stop),
    leaveMin: stop.leaveSec / 60,
  }));

function levelAt({ points }: LevelLine, sec: number): number {
  const after = points.findIndex((point) => point[0] > sec);
  const [before, next] = [points[(after < 0 ? points.length : after) - 1], points[after]];
  if (before === undefined) return 0;
  if (next === undefined) return before[1];
  return before[1] + ((next[1] - before[1]) * (sec - before[0])) / (next[0] - before[0]);
}

const half = Math.floor(day.stops.length / 2);

describe('a day that goes as planned', () => {
  test.each([1, half, day.stops.length - 1])('has aboard what the levels of the plan say, after %i stops', (count) => {
    const now = dayNow(book, day, doneAsPlanned(count), []);
    const leaveSec = day.stops[count - 1]?.leaveSec ?? 0;
    expect(now.sinceMin).toBeCloseTo(leaveSec / 60, 9);
    expect(now.atId).toBe(day.stops[count - 1]?.propertyId);
    expect(now.left).toEqual(day.stops.slice(count).map((stop) => stop.propertyId));
    for (const line of day.levels) {
      const found = now.aboard.compartments.find((each) => each.compartmentId === line.id);
      const bags = now.aboard.bags.find((each) => line.id === `dry ${each.productId}`);
      const level = line.kind === 'nurse' ? now.aboard.waterGal : (bags?.weightLb ?? 0);
      const has =
        line.kind === 'nurse' || line.kind === 'bags' ? level : (found?.volumeGal ?? 0) + (found?.weightLb ?? 0);
      expect(has, line.label).toBeCloseTo(levelAt(line, leaveSec), 6);
    }
  });

  test('goes on as planned, for no more than it had still to cost', () => {
    const now = dayNow(book, day, doneAsPlanned(half), []);
    const underWay = underWayOf(book, day.rigId, now, now.sinceMin);
    if (underWay === null) throw new Error('nowhere');
    const rest = buildProblem(book, roundId, { dates: [day.date], underWay: [underWay], propertyIds: now.left });
    if (!rest.ok) throw new Error(rest.error.detail);
    const found = explainPlan(book, rest.value, solve(rest.value, { seed: 3, iterations: 300 }));
    expect(judgePlan(rest.value, found).violations).toEqual([]);
    expect(found.unplaced).toEqual([]);
    const [again] = found.days;
    expect(again?.startSec).toBeCloseTo(now.sinceMin * 60, 3);
    // Amounts aboard are rounded down to hundredths, which may cost the time of a few hundredths more.
    expect(again?.endSec ?? 0).toBeLessThanOrEqual(day.endSec + 1);
    expect(again?.stops.map((stop) => stop.propertyId).toSorted()).toEqual([...now.left].toSorted());
  });
});

describe('a day that does not', () => {
  test('leaves out what was left out, with the reason, and does not count its material', () => {
    const [first, second] = day.stops;
    const skipped: Visit = {
      ...(doneAsPlanned(1)[0] as Visit),
      id: 's',
      propertyId: second?.propertyId ?? '',
      outcome: { kind: 'skipped', reason: 'gate locked' },
    };
    const now = dayNow(book, day, [...doneAsPlanned(1), skipped], []);
    expect(now.done).toEqual([first?.propertyId]);
    expect(now.skipped).toEqual([{ propertyId: second?.propertyId, reason: 'gate locked' }]);
    expect(now.left).not.toContain(second?.propertyId);
    expect(now.aboard).toEqual(dayNow(book, day, doneAsPlanned(1), []).aboard);
  });

  test('has so much less in the tank as was used more', () => {
    const [visit] = doneAsPlanned(1) as readonly [Visit];
    if (visit.outcome.kind !== 'done') throw new Error('not done');
    const tasks = visit.outcome.tasks.map((task) => ({
      ...task,
      ...(task.expectedGal === undefined ? {} : { usedGal: task.expectedGal * 1.1 }),
      ...(task.expectedLb === undefined ? {} : { usedLb: task.expectedLb * 1.1 }),
    }));
    const more: Visit = { ...visit, outcome: { kind: 'done', tasks } };
    const planned = tasks.reduce((sum, each) => sum + (each.expectedGal ?? 0) + (each.expectedLb ?? 0), 0);
    const aboard = (visits: readonly Visit[]): number =>
      dayNow(book, day, visits, []).aboard.compartments.reduce((sum, each) => sum + each.volumeGal + each.weightLb, 0);
    expect(aboard([visit]) - aboard([more])).toBeCloseTo(planned * 0.1, 6);
    for (const each of usedAgainstPlan([more])) {
      expect(each.excess).toBeCloseTo(0.1, 9);
      expect(each.checkCalibration).toBe(true);
    }
  });

  test('is read from the gauges where they were read after the last stop, for what they name', () => {
    const now = dayNow(book, day, doneAsPlanned(half), []);
    const [content] = now.aboard.compartments;
    if (content === undefined) throw new Error('nothing aboard');
    const gauge: Gauge = {
      id: 'g',
      on: day.date,
      rigId: day.rigId,
      atMin: now.sinceMin + 1,
      compartments: [{ compartmentId: content.compartmentId, materialId: content.materialId, gal: 1.25 }],
      nurseGal: 7,
      bags: [],
    };
    const read = dayNow(book, day, doneAsPlanned(half), [gauge]).aboard;
    expect(read.waterGal).toBe(7);
    expect(read.bags).toEqual(now.aboard.bags);
    expect(read.compartments.find((each) => each.compartmentId === content.compartmentId)?.volumeGal).toBe(1.25);
    const earlier = { ...gauge, atMin: now.sinceMin - 1 };
    expect(dayNow(book, day, doneAsPlanned(half), [earlier]).aboard).toEqual(now.aboard);
  });
});

test('5 % more than planned is still in order, and a little beyond that is not', () => {
  const used = (usedGal: number): Visit => ({
    ...(doneAsPlanned(1)[0] as Visit),
    outcome: {
      kind: 'done',
      tasks: [{ zoneId: 'z', treatmentId: 't', treatedSqFt: 1000, expectedGal: 40, usedGal }],
    },
  });
  expect(usedAgainstPlan([used(42)])).toMatchObject([{ used: 42, planned: 40, checkCalibration: false }]);
  expect(usedAgainstPlan([used(42.1)])).toMatchObject([{ checkCalibration: true }]);
  expect(usedAgainstPlan([used(37.9)])).toMatchObject([{ checkCalibration: true }]);
  expect(usedAgainstPlan([used(42), used(38)])).toMatchObject([{ used: 80, planned: 80, zones: 2, excess: 0 }]);
});

test('seed and the starter after it are written down apart, each with its own pounds', () => {
  const step = (number: number, weightLb: number) => ({
    ...(day.stops[0]?.tasks[0] as PlanDay['stops'][number]['tasks'][number]),
    step: number,
    areaSqFt: 4000,
    volumeGal: 0,
    weightLb,
  });
  const [stop] = day.stops;
  if (stop === undefined) throw new Error('no stop');
  const { outcome } = visitAsPlanned(book, 'v', roundId, day, { ...stop, tasks: [step(0, 20), step(1, 8)] });
  expect(outcome).toMatchObject({
    tasks: [
      { step: 0, treatedSqFt: 4000, expectedLb: 20 },
      { step: 1, treatedSqFt: 4000, expectedLb: 8 },
    ],
  });
});

describe('the morning of a date', () => {
  const mornings = morningOf(
    book,
    plan.days.filter((each) => each.date === day.date),
  );

  test('has every fill point of the plan at its time, with all that is taken on there', () => {
    for (const morning of mornings) {
      const own = plan.days.find((each) => each.date === day.date && each.rigId === morning.rigId);
      const visits = own?.activities.flatMap((each) =>
        each.kind === 'refill' && each.fillPointId !== '' ? [each] : [],
      );
      expect(morning.fills.map((each) => each.startSec)).toEqual(visits?.map((each) => each.startSec));
      expect(morning.carryWeightLb).toBe(own?.carryWeightLb);
    }
  });

  test('names lawns to call first, and gates with less than two inches to spare', () => {
    const [stop] = day.stops;
    const task = stop?.tasks.find((each) => each.method.kind === 'machine');
    const method = task?.method;
    const machine = book.machines.find((each) => method?.kind === 'machine' && each.id === method.machineId);
    if (stop === undefined || task === undefined || machine === undefined)
      throw new Error('no machine at the first stop');
    const gate = { id: 'g', name: 'side gate', clearWidthIn: machine.transitWidthIn + 1.5, locked: true };
    const withGate = (clearWidthIn: number) => ({
      ...book,
      properties: book.properties.map((each) => ({
        ...each,
        cautions: [],
        ...(each.id === stop.propertyId
          ? {
              gates: [{ ...gate, clearWidthIn }],
              zones: each.zones.map((zone) => ({ ...zone, gateIds: ['g'] })),
            }
          : { gates: each.gates.map((other) => ({ ...other, locked: false })) }),
      })),
    });
    const [tight] = morningOf(withGate(gate.clearWidthIn), [day]);
    expect(tight?.calls.find((each) => each.propertyId === stop.propertyId)?.why).toContain('locked');
    expect(tight?.tightGates.filter((each) => each.propertyId === stop.propertyId)).toMatchObject([
      { gate: 'side gate', widthIn: gate.clearWidthIn, machineIn: machine.transitWidthIn },
    ]);
    const [wide] = morningOf(withGate(machine.transitWidthIn + 2), [day]);
    expect(wide?.tightGates.filter((each) => each.propertyId === stop.propertyId)).toEqual([]);
  });
});
