import { describe, expect, it } from 'vitest';
import type { AreaGeometry } from '../../../core/book/index.ts';
import { commonGround, outlinesOverlap, quickLie } from '../../../core/geometry/index.ts';
import { HOME } from '../measure/lawns.ts';
import { rectangle, ringAt } from './shapes.ts';

const boxAt = (west: number, south: number, east: number, north: number): AreaGeometry => ({
  type: 'Polygon',
  coordinates: [ringAt(HOME, rectangle(west, south, east, north))],
});

describe('commonGround', () => {
  it('gives both areas and what they share', () => {
    const found = commonGround(boxAt(0, 0, 40, 20), boxAt(30, 10, 50, 50));
    expect(found?.firstSqM).toBeCloseTo(800, 2);
    expect(found?.secondSqM).toBeCloseTo(800, 2);
    // From x 30 to 40 and y 10 to 20.
    expect(found?.bothSqM).toBeCloseTo(100, 2);
  });

  it('is null where an outline has no ground', () => {
    expect(commonGround(boxAt(0, 0, 40, 20), { type: 'Polygon', coordinates: [[HOME, HOME]] })).toBeNull();
  });
});

describe('quickLie', () => {
  const yard = boxAt(0, 0, 40, 40);
  it.each([
    [boxAt(10, 10, 20, 20), 'within'],
    [boxAt(50, 10, 60, 20), 'apart'],
    [boxAt(30, 10, 60, 20), 'overlaps'],
    [boxAt(39.95, 10, 60, 20), 'unsure'],
    [boxAt(-10, -10, 60, 60), 'unsure'],
    [boxAt(40, 0, 60, 20), 'unsure'],
  ] as const)('tells how it lies', (shape, lie) => {
    expect(quickLie(shape, yard)).toBe(lie);
    if (lie !== 'unsure') expect(outlinesOverlap(shape, yard)).toBe(lie !== 'apart');
  });

  it('says apart for what lies in a hole, and unsure for what goes round the hole', () => {
    const [shell] = boxAt(0, 0, 40, 40).coordinates;
    const [hole] = boxAt(10, 10, 30, 30).coordinates;
    const ring = { type: 'Polygon', coordinates: [shell, hole] } as AreaGeometry;
    expect(quickLie(boxAt(15, 15, 20, 20), ring)).toBe('apart');
    expect(quickLie(boxAt(5, 5, 35, 35), ring)).toBe('unsure');
    expect(quickLie(boxAt(2, 2, 8, 8), ring)).toBe('within');
  });
});
