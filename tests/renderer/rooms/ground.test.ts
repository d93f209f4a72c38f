import { expect, test } from 'vitest';
import type { PlanTask } from '../../../core/plan/result/index.ts';
import { groundOf, groundWords } from '../../../renderer/rooms/day/ground.ts';

const area = (sqFt: number) => `${sqFt} ft²`;

function task(propertyId: string, zoneId: string, treatmentId: string, areaSqFt: number, step = 0): PlanTask {
  return {
    propertyId,
    zoneId,
    treatmentId,
    step,
    method: { kind: 'hand', handMethodId: 'hand' },
    person: 1,
    startSec: 0,
    endSec: 0,
    areaSqFt,
    volumeGal: 0,
    weightLb: 0,
    loadNumbers: [],
    why: '',
  };
}

test('a zone that two treatments go over counts once as ground and twice as ground treated', () => {
  const tasks = [task('p', 'front', 'feed', 6000), task('p', 'back', 'feed', 3485), task('p', 'front', 'weed', 6000)];
  // 6,000 + 3,485 of ground; the front twice: 15,485 treated.
  expect(groundOf(tasks)).toEqual({ zonesSqFt: 9485, treatedSqFt: 15_485 });
  expect(groundWords(tasks, area)).toBe('9485 ft² · 15485 ft² ground treated');
});

test('of a band and the whole zone the whole counts, in either order, and so do steps', () => {
  const tasks = [
    task('p', 'front', 'edge', 800),
    task('p', 'front', 'feed', 6000),
    task('p', 'front', 'feed', 6000, 1),
  ];
  expect(groundOf(tasks)).toEqual({ zonesSqFt: 6000, treatedSqFt: 12_800 });
  expect(groundOf([...tasks].reverse()).zonesSqFt).toBe(6000);
});

test('zones of the same id on two properties are two pieces of ground', () => {
  expect(groundOf([task('p', 'front', 'feed', 1000), task('q', 'front', 'feed', 500)]).zonesSqFt).toBe(1500);
});

test('what the machine does not reach is ground, and not treated', () => {
  const reckoned = { coveredSqFt: 6400, overlapShare: 0.08, averageRate: 1.08, worstRate: 3, swaths: 9, trimPasses: 1 };
  const driven = { ...task('p', 'front', 'feed', 6000), reckoned: { from: 'passes', ...reckoned, notReachedSqFt: 60 } };
  expect(groundOf([driven as PlanTask])).toEqual({ zonesSqFt: 6000, treatedSqFt: 5940 });
  expect(groundWords([driven as PlanTask], area)).toBe('6000 ft² · 5940 ft² ground treated');
});

test('one treatment says its ground alone', () => {
  expect(groundWords([task('p', 'front', 'feed', 1000)], area)).toBe('1000 ft²');
  expect(groundWords([], area)).toBe('0 ft²');
});
