import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyChange, Board, type StopMove } from '../../../../core/plan/board/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills } from '../../../../core/plan/refills/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { solve, startFrom } from '../../../../core/plan/search/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { naiveJudge } from '../naive/naive-judge.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { moved, NO_BOOK, orderOf, quickPlan, taskOf, toDay } from './hands.ts';

const book = sampleBook('mixed-day');
const problem = problemOf(book);
const plan = explainPlan(book, problem, solve(problem, { seed: 2, iterations: 60 }));
const board = new Board(book, problem);
const [north, south] = plan.days;
if (north === undefined || south === undefined) throw new Error('the mixed day has two rig days');
const date = north.date;

/** What a day costs when its order is placed by the code that ends a search. */
function placedCost(of: Plan, rigId: string): number {
  const { routes } = startFrom(problem, of, { keepFirst: 0, pinned: [] });
  const route = routes.find(({ slot }) => problem.rigs[problem.slots[slot]?.rig ?? -1]?.rigId === rigId);
  const placement = placeRefills(problem, route?.slot ?? -1, route?.visits ?? []);
  return placement.kind === 'placed' ? Math.round(placement.outcome.cost / 1e7) / 100 : Number.NaN;
}

describe('a stop moved by hand', () => {
  it('stands where it was put, in its own rig, and the order of the others stays', () => {
    const after = moved(board, plan, [toDay(taskOf(north.stops[4]), date, north.rigId, 1)]);
    const before = orderOf(plan, date, north.rigId);
    const wanted = [before[0], before[4], ...before.slice(1, 4), ...before.slice(5)];
    expect(orderOf(after.plan, date, north.rigId)).toEqual(wanted);
    expect(after.breaches).toEqual([]);
    expect(judgePlan(problem, after.plan).violations).toEqual([]);
  });

  it('leaves every other day as it is, to the object', () => {
    const after = moved(board, plan, [toDay(taskOf(north.stops[0]), date, north.rigId, 3)]);
    expect(after.plan.days[1]).toBe(south);
    expect(after.change.days).toHaveLength(1);
  });

  it('costs what planning that order costs, and the judge finds the same', () => {
    const task = taskOf(south.stops.find((stop) => canDo(north.rigId, stop.propertyId)));
    const after = moved(board, plan, [toDay(task, date, north.rigId, 2)]);
    for (const day of after.plan.days) expect(day.costUsd).toBe(placedCost(after.plan, day.rigId));
    expect(judgePlan(problem, after.plan).totals.costUsd).toBe(after.plan.totals.costUsd);
    expect(after.breaches.every((each) => each.code === 'day-too-long')).toBe(true);
  });

  it('put back makes the plan that was there before, figure for figure', () => {
    const there = moved(board, plan, [toDay(taskOf(north.stops[3]), date, north.rigId, 0)]);
    const back = moved(board, there.plan, [toDay(taskOf(north.stops[3]), date, north.rigId, 3)]);
    const bare = (of: Plan) =>
      of.days.map((day) => ({ ...day, whatIf: [], stops: day.stops.map((stop) => ({ ...stop, otherWays: [] })) }));
    expect(bare(back.plan)).toEqual(bare(plan));
    expect(back.plan.totals).toEqual(plan.totals);
  });

  it('dropped where it was changes nothing', () => {
    const after = moved(board, plan, [toDay(taskOf(north.stops[2]), date, north.rigId, 2)]);
    expect(after.change.days).toEqual([]);
    expect(after.plan).toEqual(plan);
  });

  it('goes with others at once, each place counted after the moves before it', () => {
    const moves = [
      toDay(taskOf(north.stops[0]), date, north.rigId, 99),
      toDay(taskOf(north.stops[1]), date, north.rigId, 99),
    ];
    const before = orderOf(plan, date, north.rigId);
    expect(orderOf(moved(board, plan, moves).plan, date, north.rigId)).toEqual([
      ...before.slice(2),
      before[0],
      before[1],
    ]);
  });
});

describe('a lawn taken out', () => {
  const after = moved(board, plan, [{ task: taskOf(north.stops[1]), to: { kind: 'out' } }]);

  it('is listed with that as its reason for every rig', () => {
    const { propertyId } = taskOf(north.stops[1]);
    const listed = after.plan.unplaced.filter((each) => each.propertyId === propertyId);
    // A hand trim is a part of its task.
    expect(listed).toHaveLength(north.stops[1]?.tasks.filter((each) => each.handTrim !== true).length ?? -1);
    for (const { reasons } of listed) {
      expect(reasons.map((each) => each.rigId)).toEqual(problem.rigs.map((each) => each.rigId));
      expect(new Set(reasons.map((each) => each.words))).toEqual(new Set(['taken out by hand']));
    }
    expect(after.breaches).toEqual([]);
    expect(after.plan.totals.unplaced).toBe(listed.length);
  });

  it('comes back where it is put', () => {
    const back = moved(board, after.plan, [toDay(taskOf(north.stops[1]), date, north.rigId, 1)]);
    expect(orderOf(back.plan, date, north.rigId)).toEqual(orderOf(plan, date, north.rigId));
    expect(back.plan.unplaced).toEqual([]);
    expect(back.plan.totals).toEqual(plan.totals);
  });

  it('is offered places in words, the cheapest first, that cost what they say', () => {
    const places = board.places(after.plan, taskOf(north.stops[1]));
    expect(places.length).toBeGreaterThan(0);
    expect(places.map((each) => each.addedUsd)).toEqual(places.map((each) => each.addedUsd).toSorted((a, b) => a - b));
    for (const { date: on, rigId, position, addedUsd, words } of places) {
      const back = moved(board, after.plan, [toDay(taskOf(north.stops[1]), on, rigId, position)]);
      const cost = back.plan.totals.costUsd - after.plan.totals.costUsd;
      // The place is reckoned with the quick placing, and in the mode that takes least time there.
      expect(cost).toBeLessThanOrEqual(addedUsd + 0.02);
      expect(words).toMatch(/more, day done at \d/);
    }
  });

  it('empties the day that it was the last stop of', () => {
    const all = south.stops.map((stop): StopMove => ({ task: taskOf(stop), to: { kind: 'out' } }));
    const none = moved(board, plan, all);
    expect(none.plan.days.map((day) => day.rigId)).toEqual([north.rigId]);
    expect(none.change.emptied).toEqual([{ date, rigId: south.rigId }]);
    expect(none.breaches).toEqual([]);
  });
});

describe('what cannot be', () => {
  it('is refused with the reason of reach where the rig has no way to do the lawn', () => {
    const stop = plan.days
      .flatMap((day) => day.stops.map((each) => ({ day, each })))
      .find(({ day, each }) => {
        const other = plan.days.find((one) => one.rigId !== day.rigId);
        return other !== undefined && !canDo(other.rigId, each.propertyId);
      });
    const other = plan.days.find((one) => one.rigId !== stop?.day.rigId);
    const answer = board.move(plan, [toDay(taskOf(stop?.each), date, other?.rigId ?? '', 0)]);
    expect(answer.kind).toBe('refused');
    // The mixed day's gates of less than the ride-on's 50 in keep it out; the words are those of the reach of the lawn.
    if (answer.kind === 'refused') expect(answer.refusals[0]?.words).toMatch(/cannot do .*: .*gate \d+ in, .* \d+ in/i);
  });

  it('is refused on a day on which the rig does not work', () => {
    const answer = board.move(plan, [toDay(taskOf(north.stops[0]), '2031-01-01', north.rigId, 0)]);
    expect(answer.kind === 'refused' && answer.refusals[0]?.words).toMatch(/does not work on 2031-01-01/);
  });

  it('is refused when the book has changed under the plan', () => {
    const answer = board.move({ ...plan, problemHash: 'another' }, []);
    expect(answer.kind === 'refused' && answer.refusals[0]?.words).toMatch(/plan again/);
  });
});

function canDo(rigId: string, propertyId: string): boolean {
  const rig = problem.rigs.findIndex((each) => each.rigId === rigId);
  return problem.jobs.some((job) => job.propertyId === propertyId && (job.modes[rig]?.length ?? 0) > 0);
}

const SHAPES: readonly ProblemShape[] = [
  { jobs: 8, rigs: 2, modes: 2, stations: 1, zones: 2 },
  { jobs: 8, days: 2, stations: 1, zones: 1, hours: 4, windows: 0.3, breaks: 0.5 },
  { jobs: 7, rigs: 2, stations: 1, hours: 3, thirst: 1.5, heavy: 0.5, materials: 3 },
];

/** Rules that moving stops may break. Any other one would be a fault of the moving. */
const HARD = new Set([
  'window-missed',
  'day-too-long',
  'fill-point-closed',
  'fill-point-lacks-material',
  'over-payload',
  'stock-above-capacity',
  'level-above-capacity',
  'day-not-allowed',
]);

describe('any moves at all', () => {
  it('are answered, with each task once or listed, and only limits broken, for both judges', {
    timeout: 60_000,
  }, () => {
    const start = fc.tuple(fc.integer({ min: 1, max: 10_000 }), fc.constantFrom(...SHAPES));
    const wish = fc.tuple(fc.nat(), fc.nat(), fc.nat({ max: 9 }), fc.integer({ min: 0, max: 5 }));
    fc.assert(
      fc.property(start, fc.array(wish, { minLength: 1, maxLength: 6 }), ([seed, shape], wishes) => {
        const random = randomProblem(seed, shape);
        const own = new Board(NO_BOOK, random);
        let current = quickPlan(random);
        for (const each of wishes) {
          const move = moveOf(random, each);
          const answer = own.move(current, [move]);
          if (answer.kind === 'refused') {
            expect(answer.refusals[0]?.words).toMatch(/cannot do|does not work/);
            continue;
          }
          current = applyChange(current, answer.change);
          expectWhole(random, current);
          const { violations } = judgePlan(random, current);
          expect(violations.filter(({ code }) => !HARD.has(code))).toEqual([]);
          expect(answer.breaches).toHaveLength(violations.length);
          expect(naiveJudge(random, current).faults.length > 0).toBe(violations.length > 0);
        }
      }),
      { numRuns: casesOf(12, 3), seed: 6, endOnFailure: true },
    );
  });
});

function moveOf(of: Problem, [task, slot, position, out]: readonly [number, number, number, number]): StopMove {
  const placeable = of.jobs.flatMap((job) => job.tasks);
  const named = of.tasks[placeable[task % placeable.length] ?? 0];
  const there = of.slots[slot % of.slots.length];
  if (named === undefined || there === undefined) throw new Error('a problem without work');
  const { propertyId, zoneId, treatmentId, step } = named;
  const name = { propertyId, zoneId, treatmentId, step };
  if (out === 0) return { task: name, to: { kind: 'out' } };
  return toDay(name, of.dates[there.day] ?? '', of.rigs[there.rig]?.rigId ?? '', position);
}

function expectWhole(of: Problem, current: Plan): void {
  const done = current.days.flatMap((day) =>
    day.stops.flatMap((stop) => stop.tasks.filter((task) => task.handTrim !== true)),
  );
  const names = [...done, ...current.unplaced].map((each) => `${each.propertyId} ${each.zoneId} ${each.step}`);
  expect(names.toSorted()).toEqual(of.tasks.map((each) => `${each.propertyId} ${each.zoneId} ${each.step}`).toSorted());
}
