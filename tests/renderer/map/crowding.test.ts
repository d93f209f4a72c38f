import { expect, test } from 'vitest';
import { crowdedLabels as crowdedOf, type LabelSpot, LEAST_APART } from '../../../renderer/map/crowding.ts';

const crowdedLabels = (spots: readonly LabelSpot[]) => crowdedOf(spots, LEAST_APART.stop);

const row = (count: number, apart: number) =>
  Array.from({ length: count }, (_, index) => ({ id: String(index + 1), x: index * apart, y: 0 }));

test('labels with room between them all stay', () => {
  expect([...crowdedLabels(row(9, 26))]).toEqual([]);
  expect([...crowdedLabels([...row(1, 0), { id: 'below', x: 0, y: 22 }])]).toEqual([]);
});

test('in a dense row every second or third stays, and no two of them hide each other', () => {
  // 13 px apart: two steps are 26 px, just enough. 10 px apart: three steps.
  expect([...crowdedLabels(row(6, 13))]).toEqual(['2', '4', '6']);
  expect([...crowdedLabels(row(7, 10))]).toEqual(['2', '3', '5', '6']);
});

test('the first, which is the selected one, stays and its neighbours give way', () => {
  const [one, two, three] = row(3, 20);
  expect([...crowdedLabels([two!, one!, three!])]).toEqual(['1', '3']);
});

test('closer by, at twice the scale, those that gave way are back', () => {
  const near = crowdedLabels(row(6, 13));
  expect(near.size).toBe(3);
  expect(crowdedLabels(row(6, 26)).size).toBe(0);
});

test('a field of labels: every pair that stays is apart, and each that gives way is near one that stays', () => {
  // Invented places, both sides of the origin, by steps without a common measure.
  const spots = Array.from({ length: 400 }, (_, index) => ({
    id: String(index),
    x: ((index * 61.803) % 500) - 250,
    y: ((index * 41.421) % 400) - 200,
  }));
  const crowded = crowdedLabels(spots);
  const staying = spots.filter(({ id }) => !crowded.has(id));
  const near = (one: LabelSpot, other: LabelSpot) => Math.abs(one.x - other.x) < 26 && Math.abs(one.y - other.y) < 22;
  expect(crowded.size).toBeGreaterThan(0);
  expect(staying.filter((one) => staying.some((other) => other !== one && near(one, other)))).toEqual([]);
  const gaveWay = spots.filter(({ id }) => crowded.has(id));
  expect(
    gaveWay.filter((one) => !staying.some((other) => Number(other.id) < Number(one.id) && near(one, other))),
  ).toEqual([]);
});

test('numbers of days are smaller and may stand closer', () => {
  expect(crowdedOf(row(3, 20), LEAST_APART.day).size).toBe(0);
  expect(crowdedOf(row(3, 19), LEAST_APART.day).size).toBe(1);
});
