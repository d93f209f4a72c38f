import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../core/base/index.ts';
import type { AreaGeometry, Position } from '../../core/book/index.ts';
import { distanceMetres, outlineArea } from '../../core/geometry/index.ts';
import {
  commonGround,
  copyShape,
  crossingsOf,
  cutOut,
  edgeStrip,
  merge,
  mirrorShape,
  nudge,
  offsetOutline,
  polygonOf,
  rotateShape,
  sidesOf,
  snapPoint,
  snapTargets,
  splitBy,
  squareUp,
  straighten,
  withSide,
} from '../../core/sketch/index.ts';
import { placeAt } from '../core/geometry/shapes.ts';
import { good } from '../core/sketch/feet.ts';
import {
  areaSqM,
  cornersOf,
  edgeMetres,
  HOME,
  latitudes,
  lawnOf,
  lawnSeeds,
  longitudes,
  placed,
  shifted,
  writtenTolerance,
} from './lawns.ts';

const share = fc.double({ min: -1, max: 1, noNaN: true });
/** A bent line from one side of everything to the other, turned any way. */
const lines = fc.record({
  angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
  bends: fc.array(share, { minLength: 2, maxLength: 5 }),
});
function lineOf({ angle, bends }: { readonly angle: number; readonly bends: readonly number[] }, radius: number) {
  return bends.map((bend, index): Position => {
    const along = radius * 1.3 * ((2 * index) / (bends.length - 1) - 1);
    const across = radius * 0.5 * bend;
    return placeAt(HOME, [
      along * Math.cos(angle) - across * Math.sin(angle),
      along * Math.sin(angle) + across * Math.cos(angle),
    ]);
  });
}
/** A lawn with a house in it; its corner nearest to the middle is 0.4 radii away, so the house lies free. */
function withHouse(seed: typeof lawnSeeds extends fc.Arbitrary<infer Seed> ? Seed : never): AreaGeometry {
  const house = placed(cornersOf({ seed: seed.seed ^ 1, count: 5, radius: seed.radius * 0.2 }));
  return good(cutOut(lawnOf(seed), polygonOf(house)));
}
const symmetricDifference = (first: AreaGeometry, second: AreaGeometry): number => {
  const common = good(commonGround(first, second));
  return areaSqM(first) + areaSqM(second) - 2 * areaSqM(common);
};

describe('splitting any lawn', () => {
  it('gives pieces that sum to the whole, lie apart, and merge into it again', () => {
    let count = 0;
    fc.assert(
      fc.property(lawnSeeds, lines, fc.boolean(), (seed, line, house) => {
        const lawn = house ? withHouse(seed) : lawnOf(seed);
        const pieces = splitBy(lawn, lineOf(line, seed.radius));
        if (!pieces.ok) {
          expect(pieces.error.code).toBe('nothing-to-do');
          return;
        }
        count += 1;
        const tolerance = writtenTolerance(lawn, ...pieces.value);
        const sum = pieces.value.reduce((total, piece) => total + areaSqM(piece), 0);
        expect(Math.abs(sum - areaSqM(lawn))).toBeLessThan(tolerance);
        for (const piece of pieces.value)
          expect(outlineArea(piece).faults.filter((each) => each.severity === 'error')).toEqual([]);
        const whole = good(merge(pieces.value));
        expect(Math.abs(areaSqM(whole) - areaSqM(lawn))).toBeLessThan(tolerance);
        expect(symmetricDifference(whole, lawn)).toBeLessThan(2 * tolerance);
      }),
      { numRuns: 60 },
    );
    expect(count).toBeGreaterThan(40);
  });

  it('by a line across the middle of a lawn without bays always makes two or more', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.double({ min: 0, max: 6.28, noNaN: true }), (seed, angle) => {
        // all corners are seen from the middle, so a straight line through it crosses the outline there and back
        const pieces = good(splitBy(lawnOf(seed), lineOf({ angle, bends: [0, 0] }, seed.radius)));
        expect(pieces.length).toBeGreaterThanOrEqual(2);
      }),
      { numRuns: 100 },
    );
  });
});

describe('cutting and merging any two lawns', () => {
  it('A = (A without B) + (A and B)', () => {
    fc.assert(
      fc.property(lawnSeeds, lawnSeeds, share, (first, second, east) => {
        const left = lawnOf(first);
        const right = polygonOf(placed(shifted(cornersOf(second), east * first.radius, 0)));
        const [cut, common] = [cutOut(left, right), commonGround(left, right)];
        fc.pre(cut.ok && common.ok);
        const parts = areaSqM(good(cut)) + areaSqM(good(common));
        expect(Math.abs(parts - areaSqM(left))).toBeLessThan(writtenTolerance(left, right, left, right) + 0.04);
        const larger = Math.max(areaSqM(left), areaSqM(right));
        expect(areaSqM(good(merge([left, right])))).toBeGreaterThan(larger - writtenTolerance(left, right));
      }),
      { numRuns: 80 },
    );
  });
});

describe('an offset of any lawn', () => {
  const distances = fc.double({ min: 0.5, max: 30, noNaN: true });

  it('out and in again holds all of it; in and out again lies in it', () => {
    fc.assert(
      fc.property(lawnSeeds, distances, (seed, feet) => {
        const lawn = lawnOf(seed);
        const closed = good(offsetOutline(good(offsetOutline(lawn, feet)), -feet));
        // arcs lie up to 1 mm inside the true ones, both ways
        const slack = edgeMetres(lawn) * 0.002 + 0.05;
        expect(missing(lawn, closed)).toBeLessThan(slack);
        const inner = offsetOutline(lawn, -feet);
        if (!inner.ok) return;
        expect(missing(good(offsetOutline(inner.value, feet)), lawn)).toBeLessThan(slack);
      }),
      { numRuns: 20 },
    );
  });

  it('outwards, inwards and the strip between fit together', () => {
    fc.assert(
      fc.property(lawnSeeds, distances, (seed, feet) => {
        const lawn = lawnOf(seed);
        const inner = offsetOutline(lawn, -feet);
        const strip = areaSqM(good(edgeStrip(lawn, feet)));
        const left = inner.ok ? areaSqM(inner.value) : 0;
        expect(Math.abs(strip + left - areaSqM(lawn))).toBeLessThan(2 * writtenTolerance(lawn) + 0.05);
        expect(areaSqM(good(offsetOutline(lawn, feet)))).toBeGreaterThan(areaSqM(lawn));
      }),
      { numRuns: 60 },
    );
  });

  /** Ground of the first outline that the second lacks, m2. */
  function missing(first: AreaGeometry, second: AreaGeometry): number {
    return areaSqM(first) - areaSqM(good(commonGround(first, second)));
  }
});

describe('moving any lawn', () => {
  it('keeps its area, wherever it goes', () => {
    fc.assert(
      fc.property(
        lawnSeeds,
        longitudes,
        latitudes,
        fc.double({ min: -360, max: 360, noNaN: true }),
        (seed, longitude, latitude, angle) => {
          const lawn = lawnOf(seed);
          const area = areaSqM(lawn);
          const moved = [
            copyShape(lawn, HOME, [longitude, latitude]),
            rotateShape(lawn, angle),
            mirrorShape(lawn, angle),
            nudge(lawn, angle, -angle),
          ];
          for (const each of moved)
            expect(Math.abs(areaSqM(good(each)) - area)).toBeLessThan(writtenTolerance(lawn) + 1e-7 * area);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('there and back again puts every corner back to 1 mm', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.double({ min: -180, max: 180, noNaN: true }), (seed, angle) => {
        const corners = placed(cornersOf(seed));
        const lawn = polygonOf(corners);
        for (const back of [
          good(nudge(good(nudge(lawn, angle, 5)), -angle, -5)),
          good(copyShape(good(copyShape(lawn, HOME, [10, 50])), [10, 50], HOME)),
        ]) {
          for (const [index, corner] of corners.entries()) {
            expect(distanceMetres(corner, back.coordinates[0]?.[index] as Position)).toBeLessThan(0.001);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('the table of any outline', () => {
  it('a typed length, bearing or turn is there afterwards, to 1 mm or the angle of 1 mm', () => {
    fc.assert(
      fc.property(
        lawnSeeds,
        fc.nat(),
        fc.double({ min: 3, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 359, noNaN: true }),
        (seed, pick, lengthFt, bearingDeg) => {
          const corners = placed(cornersOf(seed));
          // on the closing side the first corner moves, and the plane's north with it
          const index = pick % (corners.length - 1);
          const side = sidesOf(good(withSide(corners, index, { lengthFt, bearingDeg })))[index]!;
          expect(Math.abs(side.lengthFt - lengthFt)).toBeLessThan(0.003);
          const off = Math.abs(side.bearingDeg - bearingDeg);
          expect(Math.min(off, 360 - off) * (Math.PI / 180) * lengthFt).toBeLessThan(0.003);
          const turnDeg = bearingDeg / 2;
          const turned = sidesOf(good(withSide(corners, index, { turnDeg })));
          const offTurn = Math.abs(turned[index]!.turnDeg! - turnDeg) * (Math.PI / 180);
          expect(offTurn * Math.min(turned[index]!.lengthFt, turned.at(index - 1)!.lengthFt)).toBeLessThan(0.006);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('crossings of any outline', () => {
  /** Corners on a grid of 0.1 m, so that rounding to 10 micrometres decides nothing. */
  const tenths = fc.integer({ min: 0, max: 1000 });
  const tangles = fc.array(fc.tuple(tenths, tenths), { minLength: 4, maxLength: 14 });

  it('are there exactly where the measure keeps an outline out of plans', () => {
    let crossed = 0;
    fc.assert(
      fc.property(tangles, (offsets) => {
        const corners = offsets.map(([x, y]): Position => [HOME[0] + x / 1e6, HOME[1] + y / 1e6]);
        const { areaSqM: area, faults } = outlineArea(polygonOf(corners));
        // an outline of hardly any width, or one crossed by a hair, is another matter
        fc.pre(area !== null && area > 1 && !faults.some((each) => each.code === 'geometry-hairline-crossing'));
        const all = crossingsOf(corners, true);
        fc.pre(all.every((each) => each.kind === 'crosses'));
        const found = all.length > 0;
        crossed += found ? 1 : 0;
        expect(found).toBe(faults.some((each) => each.code === 'geometry-self-crossing'));
      }),
      { numRuns: 300 },
    );
    expect(crossed).toBeGreaterThan(30);
  });

  it('are none in a lawn whose corners are seen from the middle', () => {
    fc.assert(
      fc.property(lawnSeeds, (seed) => {
        expect(crossingsOf(placed(cornersOf(seed)), true)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});

describe('squaring up and straightening any outline', () => {
  it('leaves right angles, and has nothing more to do', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.array(fc.tuple(share, share), { minLength: 6, maxLength: 6 }),
        (angle, shakes) => {
          const ell = [
            [0, 0],
            [30, 0],
            [30, 12],
            [14, 12],
            [14, 26],
            [0, 26],
          ];
          const shaken = ell.map(([x, y], index): readonly [number, number] => {
            const east = (x ?? 0) + 0.4 * (shakes[index]?.[0] ?? 0);
            const north = (y ?? 0) + 0.4 * (shakes[index]?.[1] ?? 0);
            return [east * Math.cos(angle) - north * Math.sin(angle), east * Math.sin(angle) + north * Math.cos(angle)];
          });
          const squared = squareUp(placed(shaken));
          fc.pre(squared.ok);
          const { corners, movedFt } = good(squared);
          expect(sidesOf(corners).map((side) => Math.round(Math.abs(side.turnDeg!) * 100) / 100)).toEqual([
            90, 90, 90, 90, 90, 90,
          ]);
          // the true shape lies within the shake of 0.57 m, and a squared one cannot be much worse than twice that
          expect(movedFt * 0.3048).toBeLessThan(1.5);
          expect(squareUp(corners)).toMatchObject({ ok: false, error: { code: 'nothing-to-do' } });
        },
      ),
      { numRuns: 100 },
    );
  });

  it('no corner that was left out strays farther than the tolerance', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.double({ min: 0.1, max: 60, noNaN: true }), (seed, toleranceFt) => {
        const corners = placed(cornersOf(seed));
        const thinned = straighten(corners, toleranceFt);
        if (!thinned.ok) return;
        expect(thinned.value.movedFt).toBeLessThanOrEqual(toleranceFt);
        expect(thinned.value.corners.length).toBeGreaterThanOrEqual(3);
        expect(thinned.value.corners.every((each) => corners.includes(each))).toBe(true);
        const again = straighten(thinned.value.corners, toleranceFt / 1000);
        expect(again.ok ? again.value.corners.length : 0).toBeLessThan(thinned.value.corners.length);
      }),
      { numRuns: 100 },
    );
  });
});

describe('snapping anywhere', () => {
  const shapes = Array.from({ length: 60 }, (_, index) => {
    const { unit } = createRandom(index);
    const corners = cornersOf({ seed: index, count: 8, radius: 25 });
    return { id: `${index}`, geometry: polygonOf(placed(shifted(corners, 300 * unit(), 300 * unit()))) };
  });
  const targets = snapTargets(shapes);
  const corners = shapes.flatMap((shape) => (shape.geometry.coordinates[0] ?? []) as readonly Position[]);

  it('finds the nearest corner within the tolerance, and nothing beyond it', () => {
    const metres = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(metres, metres, fc.double({ min: 0.5, max: 30, noNaN: true }), (east, north, toleranceFt) => {
        const position = placeAt(HOME, [east, north]);
        const snap = snapPoint(position, targets, toleranceFt);
        const nearest = Math.min(...corners.map((corner) => distanceMetres(position, corner))) / 0.3048;
        if (snap !== null) expect(distanceMetres(position, snap.at) / 0.3048).toBeLessThan(toleranceFt + 0.001);
        fc.pre(Math.abs(nearest - toleranceFt) > 0.001);
        expect(snap?.kind === 'corner').toBe(nearest < toleranceFt);
        if (snap?.kind === 'corner') expect(distanceMetres(position, snap.at) / 0.3048).toBeCloseTo(nearest, 3);
      }),
      { numRuns: 300 },
    );
  });
});
