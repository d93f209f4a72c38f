import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { snapPoint, snapTargets } from '../../../core/sketch/index.ts';
import { block, blockOutline, feetAt, HOME } from './feet.ts';

const TARGETS = snapTargets([
  { id: 'left', geometry: blockOutline(0, 0, 100, 100) },
  { id: 'right', geometry: blockOutline(60, -50, 160, 50) },
]);

describe('snapping', () => {
  it('prefers the corner, then the crossing, then the side', () => {
    expect(snapPoint(feetAt(1, -1.5), TARGETS, 3)).toEqual({ kind: 'corner', at: feetAt(0, 0), of: ['left'] });
    // the upper side of "right" crosses the right side of "left" at (100, 50)
    const crossing = snapPoint(feetAt(99, 51), TARGETS, 3)!;
    expect(crossing).toMatchObject({ kind: 'crossing', of: ['left', 'right'] });
    expect(crossing.at[0]).toBeCloseTo(feetAt(100, 50)[0], 8);
    expect(crossing.at[1]).toBeCloseTo(feetAt(100, 50)[1], 8);
    const edge = snapPoint(feetAt(30, 102), TARGETS, 3)!;
    expect(edge).toMatchObject({ kind: 'edge', of: ['left'] });
    expect(edge.at[1]).toBeCloseTo(feetAt(30, 100)[1], 8);
  });

  it('goes no farther than the tolerance', () => {
    expect(snapPoint(feetAt(30, 103.1), TARGETS, 3)).toBeNull();
    expect(snapPoint(feetAt(30, 102.9), TARGETS, 3)?.kind).toBe('edge');
    expect(snapPoint(feetAt(30, 100), TARGETS, 0)).toBeNull();
  });

  it('leaves out its own outline, but for its first corner once there are three', () => {
    const own = { id: 'left', corners: block(0, 0, 100, 100) };
    expect(snapPoint(feetAt(100, 101), TARGETS, 3, own)).toBeNull();
    expect(snapPoint(feetAt(1, 1), TARGETS, 3, own)).toEqual({ kind: 'corner', at: own.corners[0], of: [] });
    expect(snapPoint(feetAt(1, 1), TARGETS, 3, { ...own, corners: own.corners.slice(0, 2) })).toBeNull();
  });

  it('finds holes and sides many cells long', () => {
    const far = snapTargets([{ id: 'park', geometry: blockOutline(0, 0, 4000, 4000) }]);
    expect(snapPoint(feetAt(2000, 1), far, 3)?.kind).toBe('edge');
    expect(snapPoint(feetAt(4001, 4001), far, 3)?.kind).toBe('corner');
    const [ring] = blockOutline(0, 0, 100, 100).coordinates as never as [never];
    const [hole] = blockOutline(40, 40, 60, 60).coordinates as never as [never];
    const holed = snapTargets([{ id: 'holed', geometry: { type: 'Polygon', coordinates: [ring, hole] } }]);
    expect(snapPoint(feetAt(50, 41), holed, 3)?.kind).toBe('edge');
    expect(snapPoint(feetAt(50, 50), holed, 3)).toBeNull();
  });

  it('among 5,000 lawns takes less than a millisecond, the index less than half a second', () => {
    const random = createRandom(2);
    const shapes = Array.from({ length: 5000 }, (_, index) => {
      const [east, north] = [(index % 71) * 150, Math.floor(index / 71) * 150];
      return { id: `p-${index}`, geometry: blockOutline(east, north, east + 100, north + 100) };
    });
    // the best of a few, so that a busy machine does not fail it
    const best = (count: number, work: () => void): number =>
      Math.min(
        ...Array.from({ length: count }, () => {
          const start = performance.now();
          work();
          return performance.now() - start;
        }),
      );
    expect(best(4, () => snapTargets(shapes))).toBeLessThan(500);
    const targets = snapTargets(shapes);
    const snapMs = best(20, () => {
      for (let round = 0; round < 20; round += 1) {
        const [east, north] = [random.below(71) * 150, random.below(70) * 150];
        expect(snapPoint(feetAt(east + 1, north + 1), targets, 4)?.kind).toBe('corner');
      }
    });
    expect(snapMs / 20).toBeLessThan(1);
    expect(snapPoint(HOME, snapTargets([]), 5)).toBeNull();
  });
});
