import { expect, test } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { type Block, drivesOfDay, SHEETS } from '../../../core/reports/index.ts';
import { wayThrough } from '../../../core/reports/ways.ts';
import { dayInput } from './fixture.ts';

const A: Position = [0, 0];
const B: Position = [1, 0];
const C: Position = [2, 0];
const along: readonly Position[] = [
  [0, 0.5],
  [1, 0.5],
];

test('without roads a way goes straight, and says so', () => {
  expect(wayThrough([A, B, C], undefined)).toEqual({ route: [A, B, C], note: expect.stringContaining('go straight') });
});

test('a drive whose way is known follows it, in its own direction only, and names whose roads they are', () => {
  const ways = { drives: [{ from: A, to: B, along }], credit: 'The owners' };
  const there = wayThrough([A, B], ways);
  expect(there.route).toEqual([A, ...along, B]);
  expect(there.note).toContain('follow the roads of the map beside the book (The owners)');
  expect(there.note).not.toContain('straight');
  const further = wayThrough([A, B, C], ways);
  expect(further.route).toEqual([A, ...along, B, C]);
  expect(further.note).toContain('go straight elsewhere');
  expect(wayThrough([B, A], ways).route).toEqual([B, A]);
});

test('no place and one place make no line', () => {
  expect(wayThrough([], { drives: [], credit: '' }).route).toEqual([]);
  expect(wayThrough([A], { drives: [], credit: '' }).route).toEqual([A]);
});

test.each(['map-pages', 'run-sheet'])('the maps of the %s follow the ways that are handed in', (id) => {
  const kind = SHEETS.find((each) => each.id === id);
  if (kind?.scope !== 'day') throw new Error('a sheet of a day');
  const input = dayInput();
  const detour: Position = [-70, 41];
  const drives = drivesOfDay(input.book, input.day).map((each) => ({ ...each, along: [detour] }));
  expect(drives.length).toBeGreaterThan(1);
  const routes = (blocks: readonly Block[]): readonly Position[] =>
    blocks.flatMap((each) => (each.kind === 'map' ? each.route : 'blocks' in each ? routes(each.blocks) : []));
  const credit = 'The owners';
  expect(routes(kind.make(input).blocks)).not.toContainEqual(detour);
  expect(routes(kind.make({ ...input, ways: { drives, credit } }).blocks)).toContainEqual(detour);
});
