import { describe, expect, it } from 'vitest';
import { difference, intersection, regionArea, union } from '../../../core/geometry/index.ts';
import { cellsOf } from '../../../core/passes/cells.ts';
import { coverOf } from '../../../core/passes/cover.ts';
import { trimOf } from '../../../core/passes/trim.ts';
import type { Gauge } from '../../../core/passes/types.ts';
import { rectangle } from '../geometry/shapes.ts';
import { groundOf, houseLawn } from './grounds.ts';

const gauge: Gauge = {
  swathM: 1,
  overlapM: 0.2,
  trimSwathM: 1,
  trimPasses: 2,
  sectionsM: null,
  shieldedSide: null,
  squareCorners: false,
  turnSec: 3,
  metresPerSec: 1.5,
  mark: null,
  transitMetresPerSec: 1.5,
};

describe('trim passes', () => {
  it('keep half a width from the edge, then a width less the overlap', () => {
    const { passes, rest, bare } = trimOf(groundOf(rectangle(0, 0, 20, 10)), gauge);
    // 0.5 and 1.3 m from the edge; lanes lie over what is 1.6 m from it, bare is what is 1.8 m from it.
    expect(passes.map((each) => regionArea(each.middle))).toEqual(
      [19 * 9, 17.4 * 7.4].map((area) => expect.closeTo(area, 6)),
    );
    expect(regionArea(rest)).toBeCloseTo(16.8 * 6.8, 6);
    expect(regionArea(bare)).toBeCloseTo(16.4 * 6.4, 6);
  });

  it('treat the ground within half a width of their line and no other', () => {
    const [first] = trimOf(groundOf(rectangle(0, 0, 20, 10)), gauge).passes;
    // The ring is 1 m wide, less four rounded corners of (1 - pi / 4) 0.5^2; arcs lie up to 1 mm inside true ones.
    expect(regionArea(first!.treated)).toBeCloseTo(200 - 18 * 8 - 4 * (1 - Math.PI / 4) * 0.25, 2);
  });

  it('leave what is too narrow for the next one to the swaths', () => {
    // After a first pass on 2.5 m, 2.5 - 2 x 0.8 = 0.9 m of it is left with the overlap on both sides: the next pass needs 1 m.
    // Along, 20 - 2 x 0.8 = 18.4 m; rounding the corners of what is left takes less than 2 %.
    const { passes, rest } = trimOf(groundOf(rectangle(0, 0, 20, 2.5)), gauge);
    expect(passes).toHaveLength(1);
    expect(regionArea(rest)).toBeGreaterThan(18.4 * 0.9 * 0.98);
    expect(regionArea(rest)).toBeLessThan(18.4 * 0.9 + 1e-6);
  });

  it('go round holes, and stop where nothing fits', () => {
    expect(trimOf(houseLawn(), gauge).passes[0]!.middle.paths.length).toBe(3);
    expect(trimOf(groundOf(rectangle(0, 0, 20, 0.8)), gauge).passes).toEqual([]);
  });
});

describe('what swaths treat', () => {
  const lane = (lane: number, from: number, to: number) => ({ lane, from, to });
  const directed = (strips: readonly ReturnType<typeof lane>[], widthM: number) => ({
    angle: 0,
    wasCutShort: false,
    strips: { lanes: { count: 9, firstM: 0.5, stepM: 0.8, widthM }, strips, lengthM: 0, lostM: 0 },
  });

  it('is one outline per cell with the area of its rectangles together', () => {
    const ground = groundOf(rectangle(-5, -5, 30, 30));
    const strips = [lane(0, 0, 10), lane(1, 2, 14), lane(2, -3, 6), lane(3, 1, 5)];
    for (const widthM of [0.9, 1, 1.7]) {
      const cells = cellsOf(directed(strips, widthM), { x: 0, y: 0 });
      expect(cells).toHaveLength(1);
      const rectangles = union(
        strips.map(({ lane: at, from, to }) => {
          const middle = 0.5 + 0.8 * at;
          return groundOf(rectangle(from, middle - widthM / 2, to, middle + widthM / 2));
        }),
      );
      const cover = coverOf(ground, [], cells, widthM);
      expect(cover.leftSqM).toBeCloseTo(regionArea(ground) - regionArea(rectangles), 4);
      expect(regionArea(intersection(cover.left, rectangles))).toBeLessThan(1e-4);
      expect(cover.outsideSqM).toBeLessThan(1e-4);
    }
  });

  it('outside the ground is counted as such', () => {
    const ground = groundOf(rectangle(0, 0, 5, 30));
    const cover = coverOf(ground, [], cellsOf(directed([lane(0, 0, 10)], 1), { x: 0, y: 0 }), 1);
    expect(cover.outsideSqM).toBeCloseTo(5, 4);
    expect(regionArea(difference(ground, [cover.left]))).toBeCloseTo(5, 4);
  });

  it('is in cells that end where swaths part or meet', () => {
    // A lane over a hole: one swath below, two beside it, one above.
    const strips = [lane(0, 0, 10), lane(1, 0, 4), lane(1, 6, 10), lane(2, 0, 4), lane(2, 6, 10), lane(3, 0, 10)];
    const cells = cellsOf(directed(strips, 1), { x: 0, y: 0 });
    expect(cells.map((each) => each.length)).toEqual([1, 2, 2, 1]);
  });
});
