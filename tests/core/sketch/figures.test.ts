import { describe, expect, it } from 'vitest';
import { outlineFigures } from '../../../core/sketch/index.ts';
import { block } from './feet.ts';

describe('figures while drawing', () => {
  it('of a square of 100 ft: 10,000 ft2, three sides of 300 ft while open, four of 400 ft when closed', () => {
    const open = outlineFigures(block(0, 0, 100, 100), false);
    expect(open.areaSqFt).toBeCloseTo(10_000, 2);
    expect(open.perimeterFt).toBeCloseTo(300, 3);
    expect(open.lastEdgeFt).toBeCloseTo(100, 3);
    expect(open.likelyErrorSqFt).toBeNull();
    expect(outlineFigures(block(0, 0, 100, 100), true).perimeterFt).toBeCloseTo(400, 3);
  });

  it('the likely error is the error of the outline times the whole way round', () => {
    expect(outlineFigures(block(0, 0, 100, 100), true, 1).likelyErrorSqFt).toBeCloseTo(400, 2);
    expect(outlineFigures(block(0, 0, 100, 100), false, 1).likelyErrorSqFt).toBeCloseTo(400, 2);
    expect(outlineFigures(block(0, 0, 100, 100), true, 0).likelyErrorSqFt).toBe(0);
  });

  it('an outline 0.3 m too far out is about 4 % of 1,000 m2', () => {
    // a square of 31.623 m: 4 x 31.623 x 0.3 = 37.9 m2 of 1,000
    const side = Math.sqrt(1000) / 0.3048;
    const figures = outlineFigures(block(0, 0, side, side), true, 0.3 / 0.3048);
    expect(figures.likelyErrorSqFt! / figures.areaSqFt!).toBeCloseTo(0.0379, 3);
  });

  it('know nothing of what is not there yet', () => {
    const none = { areaSqFt: null, perimeterFt: 0, lastEdgeFt: null, likelyErrorSqFt: null };
    expect(outlineFigures([], false, 1)).toEqual(none);
    expect(outlineFigures(block(0, 0, 10, 10).slice(0, 1), false, 1)).toEqual(none);
    const line = outlineFigures(block(0, 0, 10, 10).slice(0, 2), false, 1);
    expect(line.areaSqFt).toBeNull();
    expect(line.likelyErrorSqFt).toBeNull();
    expect(line.lastEdgeFt).toBeCloseTo(10, 4);
  });
});
