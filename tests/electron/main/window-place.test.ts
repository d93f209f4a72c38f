import { expect, test } from 'vitest';
import { isVisible, readPlace } from '../../../electron/main/window-place.ts';
import type { JsonFile } from '../../../electron/services/settings/index.ts';

const SCREENS = [
  { x: 0, y: 0, width: 1920, height: 1040 },
  { x: 1920, y: 200, width: 1280, height: 800 },
];
const place = (x: number, y: number) => ({ x, y, width: 1000, height: 700, maximized: false });
const holding = (value: unknown): JsonFile => ({
  read: async () => value,
  write: async () => ({ ok: true, value: true }),
});

test.each([
  [0, 0, true],
  [1900, 300, true],
  // 100 pixels of each side have to be on one screen.
  [-900, 0, true],
  [-901, 0, false],
  [3100, 300, true],
  [3101, 300, false],
  [0, 940, true],
  [0, 941, false],
  [5000, 0, false],
])('a window at %i, %i can be seen: %s', (x, y, seen) => {
  expect(isVisible(place(x, y), SCREENS)).toBe(seen);
});

test.each([null, {}, 'text', { ...place(0, 0), width: 10 }, { ...place(0, 0), x: 'left' }])(
  'a kept place of %j is passed over',
  async (kept) => {
    expect(await readPlace(holding(kept), SCREENS)).toBeNull();
  },
);

test('a sound place on a screen is taken, one on a screen that is gone is not', async () => {
  expect(await readPlace(holding(place(10, 10)), SCREENS)).toEqual(place(10, 10));
  expect(await readPlace(holding(place(9000, 10)), SCREENS)).toBeNull();
});
