import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { lineLengthMetres, outlineArea, ringAreaSquareMetres } from '../../../core/geometry/index.ts';
import { karneyArea, rectangle, ringAt } from './shapes.ts';

const HOME: Position = [-83, 40];
const ring = ringAt(HOME, rectangle(0, 0, 40, 20));

describe('areas while drawing', () => {
  it('are those of the ellipsoid, open or closed, either way round', () => {
    const area = karneyArea(ring);
    for (const each of [ring, ring.slice(0, -1), ring.toReversed()]) {
      expect(ringAreaSquareMetres(each)! / area).toBeCloseTo(1, 6);
    }
  });

  it('are null where the ring goes round nothing', () => {
    expect(ringAreaSquareMetres([])).toBeNull();
    expect(ringAreaSquareMetres(ring.slice(0, 2))).toBeNull();
    expect(
      ringAreaSquareMetres([
        [1e6, 1e6],
        [1e6, 2e6],
        [2e6, 2e6],
      ]),
    ).toBeNull();
  });

  it('come with the faults', () => {
    expect(outlineArea({ type: 'Polygon', coordinates: [ring.slice(0, 2)] }).faults.map((each) => each.code)).toEqual([
      'geometry-zero-width',
    ]);
    expect(outlineArea({ type: 'Polygon', coordinates: [ring] }).faults).toEqual([]);
  });

  it('lengths go along the line, and back to the start where asked', () => {
    expect(lineLengthMetres(ring.slice(0, 2))).toBeCloseTo(40, 3);
    expect(lineLengthMetres(ring.slice(0, -1), true)).toBeCloseTo(120, 3);
    expect(lineLengthMetres([])).toBe(0);
  });
});
