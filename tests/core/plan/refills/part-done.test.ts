import { describe, expect, it } from 'vitest';
import { drawnAfter, servedAfter } from '../../../../core/plan/refills/part-done.ts';

describe('shares of an op', () => {
  it('are rounded up for parts and down for time, and whole at its end', () => {
    expect([drawnAfter(10, 1, 3), drawnAfter(10, 3, 3), drawnAfter(10, 4, 3), drawnAfter(10, 0, 3)]).toEqual([
      4, 10, 10, 0,
    ]);
    expect([servedAfter(10, 1, 3), servedAfter(10, 3, 3), servedAfter(10, 4, 3), servedAfter(10, 0, 3)]).toEqual([
      3, 10, 10, 0,
    ]);
  });
});
