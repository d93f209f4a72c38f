import { expect, test } from 'vitest';
import { totalsOf } from '../../../../core/plan/result/totals.ts';

test.each([
  // Three days of 10.004 each are 30.012, although each of them is shown as 10.00.
  [3001.2, 30.01],
  [3000.49, 30],
  // Half a cent counts as a whole one, whatever the last digits of the sum.
  [10_018.499_999_999_9, 100.19],
  [0, 0],
])('%d cents of all days are rounded once, to $%d', (cents, dollars) => {
  expect(totalsOf([], 0, cents).costUsd).toBe(dollars);
});
