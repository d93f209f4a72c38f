import { expect, test } from 'vitest';
import { isNear, isOver, shareWords } from '../../../renderer/rooms/round/season-words.ts';

test.each([
  [0.449, '45 %'],
  [0.9999, '99 %'],
  [1, '100 %'],
  [0.1 + 0.2 + 0.7, '100 %'],
  [1.0004, '100.1 %'],
  [1.25, '125 %'],
])('a share of %d is shown as %s', (share, words) => {
  expect(shareWords(share)).toBe(words);
});

test('near begins above 80 %, over above the limit itself', () => {
  expect([0.8, 0.801, 1, 1.001].map(isNear)).toEqual([false, true, true, true]);
  expect([0.8, 1, 0.1 + 0.2 + 0.7, 1.001].map(isOver)).toEqual([false, false, false, true]);
});
