import { describe, expect, it } from 'vitest';
import {
  closeWalk,
  cornersFromSides,
  isWalkedRound,
  placeAlong,
  polygonOf,
  sidesOf,
  withSide,
} from '../../../core/sketch/index.ts';
import { areaSqFt, block, feetAt, good, HOME, refusalOf } from './feet.ts';

const table = (corners: Parameters<typeof sidesOf>[0]) =>
  sidesOf(corners).map((side) =>
    [side.lengthFt, side.bearingDeg, side.turnDeg].map((each) => Math.round((each ?? 0) * 100) / 100),
  );

describe('sides of an outline', () => {
  it('have length, bearing from north and turn', () => {
    // drawn anticlockwise from the south-west corner, so that every corner turns left by 90 degrees
    expect(table(block(0, 0, 80, 50))).toEqual([
      [80, 90, -90],
      [50, 0, -90],
      [80, 270, -90],
      [50, 180, -90],
    ]);
  });

  it('of an open line have no turn at its first corner', () => {
    const sides = sidesOf(block(0, 0, 80, 50), false);
    expect(sides).toHaveLength(3);
    expect(sides[0]!.turnDeg).toBeNull();
    expect(sidesOf([HOME])).toEqual([]);
  });

  it('a typed length takes the rest of the outline along', () => {
    const longer = good(withSide(block(0, 0, 80, 50), 0, { lengthFt: 100 }));
    expect(longer[0]).toEqual(block(0, 0, 80, 50)[0]);
    expect(table(longer).map((row) => row[0])).toEqual([100, 50, 80, Math.round(Math.hypot(20, 50) * 100) / 100]);
  });

  it('a typed bearing leaves the bearings of the sides after it', () => {
    const bent = table(good(withSide(block(0, 0, 80, 50), 1, { bearingDeg: 30 })));
    expect(bent[1]!.slice(0, 2)).toEqual([50, 30]);
    expect(bent[2]!.slice(0, 2)).toEqual([80, 270]);
  });

  it('a typed turn leaves the turns of the sides after it', () => {
    const bent = table(good(withSide(block(0, 0, 80, 50), 1, { turnDeg: -60 })));
    expect(bent[1]!.slice(0, 2)).toEqual([50, 30]);
    expect(bent[2]).toEqual([80, 300, -90]);
  });

  it('typing what is there already moves nothing by more than a millimetre', () => {
    const corners = block(0, 0, 80, 50);
    for (const [index, side] of sidesOf(corners).entries()) {
      const same = good(withSide(corners, index, { lengthFt: side.lengthFt, bearingDeg: side.bearingDeg }));
      for (const [at, [longitude, latitude]] of same.entries()) {
        expect(longitude).toBeCloseTo(corners[at]![0], 8);
        expect(latitude).toBeCloseTo(corners[at]![1], 8);
      }
    }
  });

  it('the closing side moves the first corner', () => {
    // from (0, 50) down the closing side, 60 ft instead of 50
    const moved = good(withSide(block(0, 0, 80, 50), 3, { lengthFt: 60 }));
    expect(moved[0]![1]).toBeCloseTo(feetAt(0, -10)[1], 8);
    expect(moved.slice(1)).toEqual(block(0, 0, 80, 50).slice(1));
  });

  it('refuse a side without length and one that is not there', () => {
    expect(refusalOf(withSide(block(0, 0, 80, 50), 0, { lengthFt: 0 })).code).toBe('geometry-invalid');
    expect(refusalOf(withSide(block(0, 0, 80, 50), 0, { bearingDeg: Number.NaN })).code).toBe('geometry-invalid');
    expect(refusalOf(withSide(block(0, 0, 80, 50), 4, { lengthFt: 5 })).code).toBe('nothing-to-do');
  });

  it('a place along a bearing', () => {
    const east = placeAlong(HOME, 90, 100);
    expect(east[0]).toBeCloseTo(feetAt(100, 0)[0], 8);
    expect(east[1]).toBeCloseTo(feetAt(100, 0)[1], 8);
  });
});

describe('a walk', () => {
  const square = [
    { lengthFt: 100, bearingDeg: 90 },
    { lengthFt: 100, turnDeg: -90 },
    { lengthFt: 100, turnDeg: -90 },
    { lengthFt: 97, turnDeg: -90 },
  ];

  it('of typed sides ends where they lead: 3 ft short of the start', () => {
    const { corners, closingErrorFt } = cornersFromSides(HOME, square);
    expect(corners).toHaveLength(5);
    expect(closingErrorFt).toBeCloseTo(3, 6);
    expect(isWalkedRound(corners)).toBe(true);
  });

  it('is closed by spreading the gap over the way', () => {
    const closed = closeWalk(cornersFromSides(HOME, square).corners);
    expect(closed.closingErrorFt).toBeCloseTo(3, 3);
    expect(closed.corners).toHaveLength(4);
    // the gap of 3 ft north is taken back by 100/397, 200/397 and 300/397 of it
    const south = (share: number) => feetAt(0, -3 * share)[1] - HOME[1];
    expect(closed.corners[1]![1] - HOME[1]).toBeCloseTo(south(100 / 397), 8);
    expect(closed.corners[2]![1] - feetAt(100, 100)[1]).toBeCloseTo(south(200 / 397), 8);
    // trapezium with corners (0,0) (100,-.756) (100,98.489) (0,97.733): 100 x (99.244 + 97.733) / 2
    expect(areaSqFt(polygonOf(closed.corners))).toBeCloseTo((100 * (99.2443 + 97.733)) / 2, 0);
  });

  it('that does not come back is none', () => {
    expect(isWalkedRound(block(0, 0, 100, 100))).toBe(false);
    expect(isWalkedRound(block(0, 0, 100, 100).slice(0, 2))).toBe(false);
    expect(closeWalk([]).corners).toEqual([]);
  });
});
