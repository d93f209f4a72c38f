import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import {
  addCorner,
  carryPlace,
  commonGround,
  copyShape,
  cornersAt,
  cutHole,
  cutOut,
  edgeStrip,
  FIRST_SHELL,
  merge,
  mirrorShape,
  moveCorner,
  nudge,
  nudgePlace,
  offsetOutline,
  openRing,
  polygonOf,
  removeCorner,
  removeHole,
  rotateShape,
  splitBy,
  withCorners,
} from '../../../core/sketch/index.ts';
import { areaSqFt, block, blockOutline, cornersInFeet, feetAt, good, refusalOf } from './feet.ts';

const LAWN = blockOutline(0, 0, 100, 100);
/** 10,000 ft2 less a house of 40 by 30 in the middle. */
const WITH_HOLE = good(cutHole(LAWN, blockOutline(30, 30, 70, 60)));

const areas = (geometries: readonly AreaGeometry[]) => geometries.map((each) => Math.round(areaSqFt(each) * 10) / 10);
const polygons = (geometry: AreaGeometry) => (geometry.type === 'Polygon' ? 1 : geometry.coordinates.length);

describe('corners', () => {
  it('are added, moved and taken away, the ring kept closed', () => {
    const more = good(addCorner(LAWN, FIRST_SHELL, 1, feetAt(50, -20)));
    expect(areaSqFt(more)).toBeCloseTo(11_000, 0);
    const moved = good(moveCorner(LAWN, FIRST_SHELL, 0, feetAt(0, 50)));
    expect(areaSqFt(moved)).toBeCloseTo(7500, 0);
    expect(moved.coordinates[0]!.at(-1)).toEqual(moved.coordinates[0]![0]);
    expect(areaSqFt(good(removeCorner(LAWN, FIRST_SHELL, 0)))).toBeCloseTo(5000, 0);
    expect(cornersAt(good(addCorner(LAWN, FIRST_SHELL, 4, feetAt(-9, 50))), FIRST_SHELL)).toHaveLength(5);
  });

  it('of a hole as well', () => {
    const hole = { polygon: 0, ring: 1 };
    expect(cornersAt(WITH_HOLE, hole)).toHaveLength(4);
    expect(areaSqFt(good(removeHole(WITH_HOLE, hole)))).toBeCloseTo(10_000, 0);
    expect(areaSqFt(good(withCorners(WITH_HOLE, hole, block(10, 10, 20, 20))))).toBeCloseTo(9900, 0);
  });

  it('that are not there, or the last three, are refused', () => {
    const triangle = polygonOf(block(0, 0, 9, 9).slice(0, 3));
    expect(refusalOf(removeCorner(triangle, FIRST_SHELL, 0)).code).toBe('geometry-invalid');
    for (const index of [-1, 4, 0.5]) {
      expect(refusalOf(removeCorner(LAWN, FIRST_SHELL, index)).code).toBe('nothing-to-do');
      expect(refusalOf(moveCorner(LAWN, FIRST_SHELL, index, feetAt(0, 0))).code).toBe('nothing-to-do');
    }
    expect(refusalOf(removeHole(LAWN, FIRST_SHELL)).code).toBe('nothing-to-do');
    expect(refusalOf(withCorners(LAWN, { polygon: 1, ring: 0 }, [])).code).toBe('nothing-to-do');
  });

  it('of an open ring stay as they are', () => {
    const corners = block(0, 0, 9, 9);
    expect(openRing(corners)).toBe(corners);
    expect(openRing([...corners, corners[0]!])).toEqual(corners);
    expect(openRing([])).toEqual([]);
  });
});

describe('moving whole outlines', () => {
  it('by feet keeps their size', () => {
    const moved = good(nudge(LAWN, 10, -5));
    const [first] = cornersAt(moved, FIRST_SHELL)!;
    expect(first![0]).toBeCloseTo(feetAt(10, -5)[0], 8);
    expect(first![1]).toBeCloseTo(feetAt(10, -5)[1], 8);
    expect(areaSqFt(moved)).toBeCloseTo(10_000, 0);
  });

  it('to another place, far north, keeps their true size', () => {
    const oslo: Position = [10.7, 59.9];
    const copy = good(copyShape(WITH_HOLE, feetAt(0, 0), oslo));
    expect(areaSqFt(copy)).toBeCloseTo(8800, 0);
    expect(cornersAt(copy, FIRST_SHELL)![0]![1]).toBeCloseTo(59.9, 6);
  });

  it('places go along with outlines', () => {
    const oslo: Position = [10.7, 59.9];
    const corner = cornersAt(good(copyShape(LAWN, feetAt(0, 0), oslo)), FIRST_SHELL)![2]!;
    expect(carryPlace(cornersAt(LAWN, FIRST_SHELL)![2]!, feetAt(0, 0), oslo)).toEqual(corner);
    const moved = nudgePlace(feetAt(5, 5), 10, -5);
    expect(moved[0]).toBeCloseTo(feetAt(15, 0)[0], 8);
    expect(moved[1]).toBeCloseTo(feetAt(15, 0)[1], 8);
  });

  it('turned by 90 degrees twice is mirrored twice', () => {
    const shape = polygonOf(
      cornersInFeet([
        [0, 0],
        [60, 0],
        [60, 20],
        [0, 40],
      ]),
    );
    const turned = good(rotateShape(good(rotateShape(shape, 90)), 90));
    const mirrored = good(mirrorShape(good(mirrorShape(shape, 0)), 90));
    for (const [index, [longitude, latitude]] of cornersAt(turned, FIRST_SHELL)!.entries()) {
      expect(longitude).toBeCloseTo(cornersAt(mirrored, FIRST_SHELL)![index]![0], 7);
      expect(latitude).toBeCloseTo(cornersAt(mirrored, FIRST_SHELL)![index]![1], 7);
    }
    expect(areaSqFt(turned)).toBeCloseTo(1800, 0);
  });

  it('turns clockwise: the corner in the south-west comes to the north-west', () => {
    const [corner] = cornersAt(good(rotateShape(LAWN, 90)), FIRST_SHELL)!;
    expect(corner![0]).toBeCloseTo(feetAt(0, 100)[0], 7);
    expect(corner![1]).toBeCloseTo(feetAt(0, 100)[1], 7);
  });

  it('mirrors in the north line: the corner in the south-west comes to the south-east', () => {
    const [corner] = cornersAt(good(mirrorShape(LAWN)), FIRST_SHELL)!;
    expect(corner![0]).toBeCloseTo(feetAt(100, 0)[0], 7);
    expect(corner![1]).toBeCloseTo(feetAt(100, 0)[1], 7);
  });

  it('off the earth is refused', () => {
    expect(refusalOf(copyShape(LAWN, feetAt(0, 0), [0, 89])).code).toBe('geometry-not-lonlat');
    expect(refusalOf(nudge({ type: 'Polygon', coordinates: [] }, 1, 1)).code).toBe('geometry-invalid');
  });
});

describe('splitting', () => {
  it('by a straight line: 10,000 ft2 into 6,000 and 4,000, the larger first', () => {
    const pieces = good(splitBy(LAWN, [feetAt(40, -10), feetAt(40, 110)]));
    expect(areas(pieces)).toEqual([6000, 4000]);
  });

  it('by a line that begins and ends on the edge', () => {
    expect(areas(good(splitBy(LAWN, [feetAt(40, 0), feetAt(40, 100)])))).toEqual([6000, 4000]);
  });

  it('from corner to corner', () => {
    expect(areas(good(splitBy(LAWN, [feetAt(0, 0), feetAt(100, 100)])))).toEqual([5000, 5000]);
  });

  it('by a line with bends inside', () => {
    // right of the line: 100 x 60, less the triangle of 20 x 100 / 2 between its bend and the straight line
    const pieces = good(
      splitBy(LAWN, [feetAt(40, -5), feetAt(40, 0), feetAt(60, 50), feetAt(40, 100), feetAt(40, 105)]),
    );
    expect(areas(pieces)).toEqual([5000, 5000]);
  });

  it('through a hole: the hole goes into both pieces', () => {
    // left 50 x 100 less 20 x 30 of the house, and the same right
    const pieces = good(splitBy(WITH_HOLE, [feetAt(50, -10), feetAt(50, 110)]));
    expect(areas(pieces)).toEqual([4400, 4400]);
    expect(pieces.every((each) => each.coordinates.length === 1)).toBe(true);
  });

  it('past a hole: it stays in its piece', () => {
    const pieces = good(splitBy(WITH_HOLE, [feetAt(20, -10), feetAt(20, 110)]));
    expect(areas(pieces)).toEqual([6800, 2000]);
    expect(pieces[0]!.coordinates).toHaveLength(2);
  });

  it('in three where the line crosses a U twice', () => {
    const shape = polygonOf(
      cornersInFeet([
        [0, 0],
        [90, 0],
        [90, 90],
        [60, 90],
        [60, 30],
        [30, 30],
        [30, 90],
        [0, 90],
      ]),
    );
    // below 60 ft: 90 x 30 + 2 x 30 x 30; above: two of 30 x 30
    expect(areas(good(splitBy(shape, [feetAt(-5, 60), feetAt(95, 60)])))).toEqual([4500, 900, 900]);
  });

  it('leaves parts that the line does not touch with the largest piece', () => {
    const two = good(merge([LAWN, blockOutline(200, 0, 210, 10)]));
    const pieces = good(splitBy(two, [feetAt(40, -10), feetAt(40, 110)]));
    expect(areas(pieces)).toEqual([6100, 4000]);
    expect(polygons(pieces[0]!)).toBe(2);
  });

  it.each<[string, readonly Position[]]>([
    ['ends inside', [feetAt(40, -10), feetAt(40, 50)]],
    ['ends in the hole', [feetAt(50, -10), feetAt(50, 45)]],
    ['misses', [feetAt(-40, -10), feetAt(-40, 110)]],
    ['runs along a side', [feetAt(0, -10), feetAt(0, 110)]],
    ['only grazes a corner', [feetAt(-10, 10.05), feetAt(10.05, -10)]],
    ['is a point', [feetAt(40, -10)]],
  ])('is refused where the line %s', (_, line) => {
    expect(refusalOf(splitBy(WITH_HOLE, line)).code).toBe('nothing-to-do');
  });

  it('is refused for a line that crosses itself or holds no places', () => {
    const loop = [feetAt(40, -10), feetAt(40, 110), feetAt(-20, 110), feetAt(60, 50)];
    expect(refusalOf(splitBy(LAWN, loop)).code).toBe('geometry-invalid');
    expect(refusalOf(splitBy(LAWN, [feetAt(0, 0), [Number.NaN, 0]])).code).toBe('geometry-invalid');
  });
});

describe('joining and cutting', () => {
  it('merges neighbours that share a side into one outline without a seam', () => {
    const pieces = good(splitBy(LAWN, [feetAt(40, -10), feetAt(43, 110)]));
    const whole = good(merge(pieces));
    expect(polygons(whole)).toBe(1);
    expect(whole.coordinates).toHaveLength(1);
    expect(areaSqFt(whole)).toBeCloseTo(10_000, 1);
  });

  it('closes a slit of 3 mm between neighbours, and leaves a gap of 1 ft', () => {
    const right = (west: number) => blockOutline(west, 0, 150, 100);
    expect(polygons(good(merge([LAWN, right(100.01)])))).toBe(1);
    expect(polygons(good(merge([LAWN, right(101)])))).toBe(2);
  });

  it('counts ground that two outlines share once', () => {
    expect(areaSqFt(good(merge([LAWN, blockOutline(50, 0, 150, 100)])))).toBeCloseTo(15_000, 0);
    expect(areaSqFt(good(commonGround(LAWN, blockOutline(50, 0, 150, 100))))).toBeCloseTo(5000, 0);
    expect(refusalOf(merge([LAWN])).code).toBe('nothing-to-do');
  });

  it('cuts pieces off and holes out', () => {
    expect(areaSqFt(good(cutOut(LAWN, blockOutline(90, 90, 200, 200))))).toBeCloseTo(9900, 0);
    expect(areaSqFt(WITH_HOLE)).toBeCloseTo(8800, 0);
    expect(polygons(good(cutOut(LAWN, blockOutline(40, -10, 60, 110))))).toBe(2);
  });

  it('widens a hole that is there', () => {
    // the house of 40 by 30 and a terrace of 50 by 20 that covers 10 of its depth: 1,200 + 1,000 - 400
    const wider = good(cutHole(WITH_HOLE, blockOutline(25, 50, 75, 70)));
    expect(areaSqFt(wider)).toBeCloseTo(10_000 - 1800, 0);
    expect(wider.coordinates).toHaveLength(2);
  });

  it('says why a cut is none', () => {
    expect(refusalOf(cutOut(LAWN, blockOutline(100, 0, 150, 100))).code).toBe('nothing-to-do');
    expect(refusalOf(cutOut(LAWN, blockOutline(-1, -1, 101, 101))).detail).toContain('Nothing would be left');
    expect(refusalOf(cutHole(LAWN, blockOutline(50, 50, 120, 60))).detail).toContain('reaches outside');
  });

  it('refuses an outline that crosses itself and says where', () => {
    const bowTie = polygonOf(block(0, 0, 50, 50).toSpliced(1, 2, feetAt(50, 50), feetAt(50, 0)));
    expect(refusalOf(cutOut(bowTie, LAWN)).detail).toContain('longitude -82.9999');
  });
});

describe('offset', () => {
  it('3 ft in takes 3 ft off every side: 94 by 94', () => {
    expect(areaSqFt(good(offsetOutline(LAWN, -3)))).toBeCloseTo(94 * 94, 0);
    expect(areaSqFt(good(edgeStrip(LAWN, 3)))).toBeCloseTo(10_000 - 94 * 94, 0);
  });

  it('3 ft out has round corners: area + perimeter x 3 + pi x 9', () => {
    const wanted = 10_000 + 1200 + 9 * Math.PI;
    expect(Math.abs(areaSqFt(good(offsetOutline(LAWN, 3))) - wanted)).toBeLessThan(0.1);
    expect(Math.abs(areaSqFt(good(edgeStrip(LAWN, -3))) - (wanted - 10_000))).toBeLessThan(0.1);
  });

  it('goes round holes as well', () => {
    // the house grows to 46 x 36 with round corners
    const wanted = 94 * 94 - (40 * 30 + 140 * 3 + 9 * Math.PI);
    expect(Math.abs(areaSqFt(good(offsetOutline(WITH_HOLE, -3))) - wanted)).toBeLessThan(0.1);
  });

  it('that leaves nothing, is nothing or is no number is refused', () => {
    expect(refusalOf(offsetOutline(LAWN, -50)).code).toBe('geometry-invalid');
    expect(refusalOf(offsetOutline(LAWN, 0)).code).toBe('nothing-to-do');
    expect(refusalOf(offsetOutline(LAWN, Number.NaN)).code).toBe('geometry-invalid');
    expect(refusalOf(edgeStrip(LAWN, 1e9)).code).toBe('geometry-invalid');
    // 60 ft in leaves no inside, so the strip is all of it
    expect(areaSqFt(good(edgeStrip(LAWN, 60)))).toBeCloseTo(10_000, 0);
  });
});
