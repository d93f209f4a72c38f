import { describe, expect, test } from 'vitest';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { boardRows, hoursOf, positionAt } from '../../../../renderer/rooms/day/board/rows.ts';
import { gapsOf, positionOf, type Spot, spotAfter } from '../../../../renderer/rooms/day/board/spots.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const book = sampleBook('mixed-day');
const problem = problemOf(book);
const plan = explainPlan(book, problem, solve(problem, { seed: 2, iterations: 20 }));
const [date = ''] = problem.dates;
const rigs = book.rigs;
const rowsWith = (moves: Parameters<typeof boardRows>[3]) => boardRows(plan, date, rigs, moves);

describe('rows of the board', () => {
  test('are the rigs of the round with the stops of the plan', () => {
    const rows = rowsWith([]);
    expect(rows.map((row) => row.rigId)).toEqual(rigs.map((rig) => rig.id));
    for (const row of rows) {
      const day = plan.days.find((each) => each.rigId === row.rigId);
      expect(row.stops.map((stop) => [stop.number, stop.name, stop.startSec])).toEqual(
        day?.stops.map((stop) => [stop.number, stop.name, stop.arriveSec]) ?? [],
      );
      expect(row.rough).toBe(false);
    }
  });

  test('show a move before it is reckoned: in its new place, with its own length, marked as rough', () => {
    const [from, to] = rowsWith([]);
    const stop = from?.stops[1];
    if (from === undefined || to === undefined || stop === undefined) throw new Error('two rigs and a stop are wanted');
    const move = { task: stop.task, to: { kind: 'day', date, rigId: to.rigId, position: 1 } } as const;
    const [left, right] = rowsWith([move]);
    expect(left?.stops.map((each) => each.name)).toEqual(
      from.stops.filter((each) => each !== stop).map((each) => each.name),
    );
    const there = right?.stops[1];
    expect(there?.name).toBe(stop.name);
    expect((there?.endSec ?? 0) - (there?.startSec ?? 0)).toBeCloseTo(stop.endSec - stop.startSec, 6);
    expect([left?.rough, right?.rough]).toEqual([true, true]);
    expect(right?.stops.map((each) => each.number)).toEqual(right?.stops.map((_, index) => index + 1));
    const out = rowsWith([{ task: stop.task, to: { kind: 'out' } }]);
    expect(out[0]?.stops).toHaveLength(from.stops.length - 1);
  });

  test('tell the place under the pointer: before the first stop whose middle is later', () => {
    const [row] = rowsWith([]);
    const [first, second] = row?.stops ?? [];
    if (row === undefined || first === undefined || second === undefined) throw new Error('two stops are wanted');
    const middle = (first.startSec + first.endSec) / 2;
    expect(positionAt(row, middle - 1, 'none')).toBe(0);
    expect(positionAt(row, middle + 1, 'none')).toBe(1);
    // The stop that is moved does not count.
    expect(positionAt(row, middle + 1, first.key)).toBe(0);
    expect(positionAt(row, Number.POSITIVE_INFINITY, first.key)).toBe(row.stops.length - 1);
  });

  test('stand between whole hours', () => {
    const { startSec, endSec } = hoursOf(rowsWith([]));
    expect([startSec % 3600, endSec % 3600]).toEqual([0, 0]);
    expect(endSec).toBeGreaterThanOrEqual(Math.max(...plan.days.map((day) => day.endSec)));
  });
});

describe('places of a row', () => {
  test('lie before each other stop and after the last one, with words that say where', () => {
    const [row] = rowsWith([]);
    const moved = row?.stops[1];
    if (row === undefined || moved === undefined) throw new Error('two stops are wanted');
    const gaps = gapsOf(row, moved.key);
    const others = row.stops.filter((stop) => stop !== moved);
    expect(gaps.map((gap) => gap.position)).toEqual(row.stops.map((_, index) => index));
    expect(gaps[0]?.words).toBe(`${row.rigName}, place 1 of ${row.stops.length}, before ${others[0]?.name}`);
    expect(gaps[1]?.words).toBe(`${row.rigName}, place 2 of ${row.stops.length}, where it is`);
    expect(gaps.at(-1)?.words).toContain(`after ${others.at(-1)?.name}`);
    expect(gaps.at(-1)?.sec).toBe(others.at(-1)?.endSec);
    // Each place is found again from the moment at which it is drawn.
    const hours = hoursOf([row]);
    for (const { position, sec } of gaps) {
      const share = (sec + 1 - hours.startSec) / (hours.endSec - hours.startSec);
      expect(positionOf({ kind: 'moment', rigId: row.rigId, share }, [row], moved.key)).toBe(position);
    }
  });
});

describe('a stop carried from the keyboard', () => {
  const space = {
    dates: ['d1', 'd2', 'd3'],
    date: 'd2',
    rigIds: ['one', 'two'],
    placesAt: (rig: string) => (rig === 'one' ? 4 : 2),
  };
  const home: Spot = { kind: 'place', rigId: 'one', position: 2 };
  const press = (...keys: readonly string[]) =>
    keys.reduce<Spot | null>((now, key) => (now === null ? now : spotAfter(key, now, home, space)), home);

  test('goes along the order, and not beyond its ends', () => {
    expect(press('ArrowLeft')).toMatchObject({ position: 1 });
    expect(press('ArrowRight')).toMatchObject({ position: 3 });
    expect(press('ArrowRight', 'ArrowRight')).toMatchObject({ position: 3 });
    expect(press('Home', 'ArrowLeft')).toMatchObject({ position: 0 });
    expect(press('End')).toMatchObject({ position: 3 });
  });

  test('goes to other rigs and dates, to a place that there is, and back', () => {
    expect(press('ArrowDown')).toEqual({ kind: 'place', rigId: 'two', position: 1 });
    expect(press('ArrowUp')).toMatchObject({ rigId: 'one' });
    expect(press('PageDown')).toEqual({ kind: 'date', date: 'd3' });
    expect(press('PageUp')).toEqual({ kind: 'date', date: 'd1' });
    expect(press('PageDown', 'ArrowDown')).toEqual(home);
    expect(press('PageDown', 'PageDown')).toBeNull();
  });

  test('is left alone by other keys', () => {
    expect([press('x'), press('Tab'), press('Enter'), press('Escape')]).toEqual([null, null, null, null]);
  });
});
