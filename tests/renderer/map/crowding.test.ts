import { expect, test } from 'vitest';
import { crowdedLabels } from '../../../renderer/map/crowding.ts';

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
