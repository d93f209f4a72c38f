import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { containsPosition, localPlane } from '../../../core/geometry/index.ts';
import { type HeightSample, sampleGrid, slopeFromHeights } from '../../../core/measure/index.ts';

const ORIGIN: Position = [-82.9, 40.1];
const plane = localPlane(ORIGIN);
const at = (x: number, y: number): Position => plane.toDegrees({ x, y });

/** Heights of `over` at the corners of a grid, 10 m apart. */
function grid(over: (x: number, y: number) => number | null, side = 5): HeightSample[] {
  return Array.from({ length: side * side }, (_, index) => {
    const [x, y] = [(index % side) * 10, Math.floor(index / side) * 10];
    return { position: at(x, y), heightM: over(x, y) };
  });
}

function slope(samples: readonly HeightSample[]) {
  const fitted = slopeFromHeights(samples);
  if (fitted.kind === 'none') throw new Error(fitted.why);
  return fitted;
}

describe('slopeFromHeights', () => {
  it('finds a plane again, and which way it falls', () => {
    // 10 m up over 100 m to the east: atan(0.1) = 5.7106 degrees, falling west.
    const west = slope(grid((x) => 250 + 0.1 * x));
    expect(west.slopeDeg).toBeCloseTo(5.7106, 4);
    expect(west.downhillDeg).toBeCloseTo(270, 3);
    expect(west.residualM).toBeCloseTo(0, 6);
    expect(west.samples).toBe(25);
    // 3 m up to the east and 4 m up to the south over 100 m each: atan(0.05), falling to the north-west by atan(3/4) = 36.87.
    const turned = slope(grid((x, y) => 0.03 * x - 0.04 * y));
    expect(turned.slopeDeg).toBeCloseTo(2.8624, 4);
    expect(turned.downhillDeg).toBeCloseTo(360 - 36.8699, 3);
  });

  it('tells by the residual how little of a plane a ridge is', () => {
    // Up 1 m in 10 m, then down again: the plane is level at the mean, 0.8 m; heights 0, 1, 2, 1, 0 lie off it by
    // sqrt((0.64 + 0.04 + 1.44 + 0.04 + 0.64) / 5) = 0.7483 m.
    const ridge = slope(grid((x) => (20 - Math.abs(x - 20)) / 10));
    expect(ridge.slopeDeg).toBeCloseTo(0, 6);
    expect(ridge.residualM).toBeCloseTo(0.7483, 4);
  });

  it('leaves out samples without a height', () => {
    expect(slope(grid((x, y) => (y > 20 ? null : 0.1 * x)))).toMatchObject({ samples: 15 });
  });

  it.each<[string, readonly HeightSample[], string]>([
    ['no samples', [], 'no heights'],
    ['no heights', grid(() => null), 'no heights'],
    ['three heights', grid(() => 1).slice(0, 3), 'only 3'],
    ['heights on one line', grid(() => 1).slice(0, 5), 'one line'],
    ['heights at one place', Array(6).fill({ position: ORIGIN, heightM: 3 }), 'one line'],
  ])('gives no slope for %s, with the reason', (_, samples, why) => {
    const fitted = slopeFromHeights(samples);
    expect(fitted.kind === 'none' && fitted.why).toContain(why);
  });

  it('finds any plane again from noise-free heights anywhere', () => {
    const share = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.integer({ min: -100, max: 3000 }), (east, north, base) => {
        const fitted = slope(grid((x, y) => base + east * x + north * y));
        expect(fitted.slopeDeg).toBeCloseTo((Math.atan(Math.hypot(east, north)) * 180) / Math.PI, 4);
        expect(fitted.residualM).toBeLessThan(1e-6);
      }),
      { numRuns: 100 },
    );
  });
});

describe('sampleGrid', () => {
  const outline = (...corners: readonly Position[]): AreaGeometry => ({ type: 'Polygon', coordinates: [corners] });

  it('covers an outline evenly with positions inside it', () => {
    const square = outline(at(0, 0), at(40, 0), at(40, 40), at(0, 40), at(0, 0));
    const positions = sampleGrid(square, 100);
    expect(positions).toHaveLength(100);
    const places = positions.map((position) => plane.toPlane(position));
    expect(Math.min(...places.map(({ x }) => x))).toBeCloseTo(2, 2);
    expect(Math.max(...places.map(({ y }) => y))).toBeCloseTo(38, 2);
    const triangle = outline(at(0, 0), at(40, 0), at(0, 40), at(0, 0));
    const inside = sampleGrid(triangle, 400);
    expect(inside.length).toBeGreaterThan(180);
    expect(inside.length).toBeLessThan(220);
    expect(inside.every((position) => containsPosition(triangle, position))).toBe(true);
  });

  it('never asks for more than it may, and always for one', () => {
    const strip = outline(at(0, 0), at(1000, 0), at(1000, 0.1), at(0, 0.1), at(0, 0));
    expect(sampleGrid(strip, 50).length).toBeLessThanOrEqual(50);
    expect(sampleGrid(strip, 50).length).toBeGreaterThan(0);
    expect(sampleGrid(outline(ORIGIN, ORIGIN, ORIGIN, ORIGIN))).toHaveLength(1);
    expect(sampleGrid({ type: 'MultiPolygon', coordinates: [] })).toEqual([]);
  });
});
