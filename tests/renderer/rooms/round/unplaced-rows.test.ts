import { expect, test } from 'vitest';
import type { PlanDay, UnplacedTask } from '../../../../core/plan/result/index.ts';
import { foundRows, unplacedRows } from '../../../../renderer/rooms/round/unplaced-rows.ts';
import { BLANK_DAY } from '../../../support/blank-day.ts';
import { sampleBook } from '../../../support/samples.ts';

const DAYS: readonly PlanDay[] = [
  { ...BLANK_DAY, rigId: 'north', rigName: 'Rig North' },
  { ...BLANK_DAY, rigId: 'south', rigName: 'Rig South' },
];

function task(lawn: string, zoneName: string, words: readonly string[]): UnplacedTask {
  return {
    propertyId: lawn,
    propertyName: `Lawn ${lawn}`,
    zoneId: zoneName,
    zoneName,
    treatmentId: 'feed',
    step: 0,
    reasons: words.map((each, at) => ({ rigId: at === 0 ? 'north' : 'south', code: 'hours', words: each, ways: [] })),
  };
}

test('tasks of one lawn that lack a place for the same reasons stand in one row, others apart', () => {
  const rows = unplacedRows(
    {
      days: DAYS,
      unplaced: [
        task('7', 'front', ['is full', 'cannot reach it']),
        task('7', 'front', ['is full', 'cannot reach it']),
        task('7', 'back', ['is full', 'cannot reach it']),
        task('7', 'side', ['gate 34 in']),
        task('8', 'front', ['is full', 'cannot reach it']),
      ],
    },
    [],
  );
  expect(rows.map(({ name, zones, why }) => ({ name, zones, why }))).toEqual([
    { name: 'Lawn 7', zones: ['front', 'back'], why: ['Rig North: is full', 'Rig South: cannot reach it'] },
    { name: 'Lawn 7', zones: ['side'], why: ['gate 34 in'] },
    { name: 'Lawn 8', zones: ['front'], why: ['Rig North: is full', 'Rig South: cannot reach it'] },
  ]);
  expect(new Set(rows.map((each) => each.key)).size).toBe(3);
  expect(foundRows(rows, 'GATE').map((each) => each.zones)).toEqual([['side']]);
  expect(foundRows(rows, 'lawn 8').map((each) => each.name)).toEqual(['Lawn 8']);
  expect(foundRows(rows, ' ')).toBe(rows);
});

test('a rig without any day in the plan is named all the same', () => {
  const rigs = sampleBook('mixed-day').rigs.map((rig, at) => ({ ...rig, id: at === 0 ? 'north' : 'south' }));
  const [row] = unplacedRows({ days: [], unplaced: [task('7', 'front', ['is full', 'cannot reach it'])] }, rigs);
  expect(row?.why).toEqual(['Rig North: is full', 'Rig South: cannot reach it']);
});
