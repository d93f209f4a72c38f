import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { EMPTY_REGION, intersection, type Region, regionArea, regionOf } from '../../../core/geometry/index.ts';
import { type PassPlan, planPasses } from '../../../core/passes/index.ts';
import { type Corner, rectangle } from '../geometry/shapes.ts';
import {
  circle,
  convexCorners,
  groundOf,
  headOf,
  houseLawn,
  isOn,
  lShape,
  planned,
  treats,
  turned,
  unevenLawn,
} from './grounds.ts';

const wayM = (plan: PassPlan): number => plan.sprayedM + plan.unsprayedM;

describe('a rectangle of 100 x 50 m, swath 1.2 m, overlap 0.1 m, two trim passes', () => {
  // Trim passes keep 0.6 and 1.7 m from the edge: 2 (100 + 50) - 8 x 0.6 = 295.2 m and 286.4 m. They leave untreated
  // 100 - 2 x 2.3 = 95.4 m one way; lanes lie over 50 - 2 x 2.2 = 45.6 m the other way: 42 of them, since
  // 41 x 1.1 + 1.2 = 46.3 m reaches and 40 x 1.1 + 1.2 = 45.2 m does not. Swaths share 0.01 m with the trim at either end.
  const trimM = 295.2 + 286.4;
  const swathM = 42 * (95.4 + 2 * 0.01);
  // Between swaths 44.4 / 41 m, 41 times, then 1.1 m from one trim pass to the other, and from the last one to the swaths.
  const betweenM = 45.6 - 1.2;
  // A round turn leaves (1 - pi / 4) r2 in each corner of the outer pass; in the corners between the passes far less.
  const cornersSqM = 4 * (1 - Math.PI / 4) * 0.6 ** 2;

  for (const degrees of [0, 12, 33, 57, 90, 121]) {
    it(`has the same plan turned by ${degrees} degrees`, () => {
      const plan = planned(groundOf(turned(rectangle(0, 0, 100, 50), degrees)), headOf(1.2));
      expect(plan.swathCount).toBe(42);
      expect(plan.trimCount).toBe(2);
      expect(plan.turnCount).toBe(43);
      expect(plan.sprayedM).toBeCloseTo(trimM + swathM, 2);
      expect(plan.unsprayedM).toBeGreaterThan(betweenM);
      expect(plan.unsprayedM).toBeLessThan(betweenM + 5);
      expect(plan.angleDeg! % 180).toBeCloseTo(degrees, 3);
      expect(plan.minutes).toBeCloseTo((wayM(plan) / 2 + 43 * 3) / 60, 9);
      expect(plan.appliedSqM).toBeCloseTo(1.2 * plan.sprayedM, 6);
      expect(plan.handTrimSqM).toBeGreaterThan(cornersSqM);
      expect(plan.handTrimSqM).toBeLessThan(cornersSqM + 0.1);
      expect(plan.offTargetShare).toBeLessThan(1e-6);
      expect(plan.notes).toEqual([]);
    });
  }

  it('has the same plan mirrored', () => {
    const slanted = turned(rectangle(0, 0, 100, 50), 20);
    const one = planned(groundOf(slanted), headOf(1.2));
    const other = planned(groundOf(slanted.map(([x, y]) => [-x, y])), headOf(1.2));
    expect(other.swathCount).toBe(one.swathCount);
    expect(wayM(other)).toBeCloseTo(wayM(one), 3);
    expect(other.angleDeg! + one.angleDeg!).toBeCloseTo(180, 3);
  });

  it('takes 50 x 1.2 m swaths exactly where they fill it without trim and overlap', () => {
    const plan = planned(groundOf(rectangle(0, 0, 100, 60)), headOf(1.2, { trimPasses: 0, overlapFt: 0 }));
    expect(plan.swathCount).toBe(50);
    expect(plan.sprayedM).toBeCloseTo(5000, 6);
    expect(plan.unsprayedM).toBeCloseTo(49 * 1.2, 6);
    // A lane may reach 1 mm over its edge, so rounding blocks none.
    expect(plan.missedShare).toBeLessThan(1e-9);
    expect(plan.overlapShare).toBeCloseTo(0, 6);
  });

  it('goes the way that is fixed, and more often across', () => {
    const across = planned(groundOf(rectangle(0, 0, 100, 50)), headOf(1.2), 90);
    expect(across.angleDeg).toBeCloseTo(90, 9);
    // (95.6 - 1.2) / 1.1 = 85.8
    expect(across.swathCount).toBe(87);
    expect(across.minutes).toBeGreaterThan(planned(groundOf(rectangle(0, 0, 100, 50)), headOf(1.2)).minutes);
  });
});

const SHAPES: readonly (readonly [string, () => Region])[] = [
  ['a lawn round a house', houseLawn],
  ['an L', lShape],
  ['a circle', () => groundOf(circle(0, 0, 15))],
  ['uneven ground 3', () => unevenLawn(3)],
  ['uneven ground 4', () => unevenLawn(4)],
  [
    'two parts',
    () => regionOf([...groundOf(rectangle(0, 0, 12, 9)).paths, ...groundOf(rectangle(20, 3, 31, 30)).paths]),
  ],
];

describe('what is treated, by a raster of 120,000 places that knows the path alone', () => {
  for (const [name, make] of SHAPES) {
    for (const [swathM, squareCorners] of [
      [0.53, false],
      [1.83, false],
      [1.83, true],
    ] as const) {
      const corners = squareCorners ? ', corners driven out' : '';
      it(`${name}, swath ${swathM} m${corners}: missed within 0.05 points, nothing outside`, () => {
        const ground = make();
        const plan = planned(ground, headOf(swathM, { squareCorners }));
        const found = raster(ground, plan, 120_000);
        expect(Math.abs(found.missed - plan.missedShare)).toBeLessThan(0.0005);
        expect(found.outside).toBeLessThan(0.0001);
        expect(plan.offTargetShare).toBeLessThan(0.0001);
        expect(regionArea(plan.handTrim) / plan.areaSqM).toBeCloseTo(plan.missedShare, 12);
        expect(regionArea(intersection(plan.handTrim, ground))).toBeCloseTo(plan.handTrimSqM, 2);
      });
    }
  }
});

/** Shares of the ground that no leg treats, and of treated places outside it, at one random place in each field of a raster. */
function raster(ground: Region, plan: PassPlan, places: number) {
  const { west, south, east, north } = ground.box;
  const [left, low] = [west / 100_000 - 2, south / 100_000 - 2];
  const [wide, high] = [(east - west) / 100_000 + 4, (north - south) / 100_000 + 4];
  const step = Math.sqrt((wide * high) / places);
  const legs = plan.path.filter((leg) => leg.kind !== 'transit');
  const counts = { on: 0, missed: 0, outside: 0 };
  const boxes = legs.map(({ points, widthM }) => ({
    west: Math.min(...points.map((each) => each.x)) - widthM,
    east: Math.max(...points.map((each) => each.x)) + widthM,
    south: Math.min(...points.map((each) => each.y)) - widthM,
    north: Math.max(...points.map((each) => each.y)) + widthM,
  }));
  const random = createRandom(5);
  for (let column = left; column < left + wide; column += step) {
    const near = legs.flatMap((leg, index) => {
      const box = boxes[index]!;
      return box.west <= column + step && column <= box.east ? [{ leg, box }] : [];
    });
    for (let row = low; row < low + high; row += step) {
      const [x, y] = [column + step * random.unit(), row + step * random.unit()];
      const isTreated = near.some(({ leg, box }) => box.south <= y && y <= box.north && treats(leg, x, y));
      if (isOn(ground, x, y)) {
        counts.on += 1;
        if (!isTreated) counts.missed += 1;
      } else if (isTreated) counts.outside += 1;
    }
  }
  return { missed: counts.missed / counts.on, outside: counts.outside / counts.on };
}

describe('plans depend on the shape alone', () => {
  for (const [name, make] of SHAPES) {
    it(`${name}: wherever the outline begins`, () => {
      const ground = make();
      const rotated = regionOf(ground.paths.map((path) => [...path.slice(2), ...path.slice(0, 2)]));
      expectSame(planned(rotated, headOf(1.22)), planned(ground, headOf(1.22)));
    });
    it(`${name}: wherever it lies`, () => {
      const ground = make();
      const moved = regionOf(
        ground.paths.map((path) => path.map(({ x, y }) => ({ x: x + 7_654_321, y: y - 1_234_567 }))),
      );
      expectSame(planned(moved, headOf(1.22)), planned(ground, headOf(1.22)));
    });
    it(`${name}: again and again`, () => {
      expect(planned(make(), headOf(1.22))).toEqual(planned(make(), headOf(1.22)));
    });
  }
});

function expectSame(one: PassPlan, other: PassPlan): void {
  expect(one.swathCount).toBe(other.swathCount);
  expect(one.trimCount).toBe(other.trimCount);
  expect(one.sprayedM).toBeCloseTo(other.sprayedM, 1);
  expect(one.unsprayedM).toBeCloseTo(other.unsprayedM, 1);
  expect(one.missedShare).toBeCloseTo(other.missedShare, 5);
}

describe('properties', () => {
  const convex = Array.from({ length: 12 }, (_, seed) => groundOf(convexCorners(createRandom(seed + 1), 22)));

  it('a narrower swath never takes fewer passes on shapes without hollows', () => {
    for (const ground of convex) {
      let before = 0;
      for (const swathM of [3.66, 2.74, 1.83, 1.22, 0.8]) {
        const { swathCount } = planned(ground, headOf(swathM, { trimSwathFt: 1 / 0.3048 }), 30);
        expect(swathCount).toBeGreaterThanOrEqual(before);
        before = swathCount;
      }
    }
  });

  it('more overlap never covers less ground with less spray', () => {
    for (const ground of convex) {
      let before = 0;
      for (const overlapM of [0, 0.1, 0.2, 0.4]) {
        const plan = planned(ground, headOf(1.22, { overlapFt: overlapM / 0.3048 }), 30);
        expect(plan.missedShare).toBeLessThan(0.01);
        expect(plan.appliedSqM).toBeGreaterThan(before);
        before = plan.appliedSqM;
      }
    }
  });

  it('what is applied is what is covered once and what is covered again', () => {
    for (const [, make] of SHAPES) {
      const plan = planned(make(), headOf(1.22, { squareCorners: true }));
      const coveredSqM = plan.areaSqM * (1 - plan.missedShare + plan.offTargetShare);
      expect(plan.appliedSqM).toBeCloseTo(coveredSqM + plan.overlapShare * plan.areaSqM, 6);
    }
  });

  it('the way hangs together: each leg begins where the one before ended', () => {
    for (const [, make] of SHAPES) {
      const { path } = planned(make(), headOf(1.22, { squareCorners: true }));
      for (const [index, leg] of path.entries()) {
        const end = path[index - 1]?.points.at(-1);
        if (end !== undefined)
          expect(Math.hypot(leg.points[0]!.x - end.x, leg.points[0]!.y - end.y)).toBeLessThan(1e-6);
      }
    }
  });
});

it('ways with nothing coming out are driven at their own speed', () => {
  const [same, quick] = [headOf(1.22), headOf(1.22, { transitMph: 3 * headOf(1.22).speedMph })].map((head) =>
    planned(houseLawn(), head),
  );
  if (same === undefined || quick === undefined) throw new RangeError('two plans');
  expect(same.unsprayedM).toBeGreaterThan(5);
  expect(quick.path).toEqual(same.path);
  expect(same.minutes - quick.minutes).toBeCloseTo(((2 / 3) * same.unsprayedM) / 2 / 60, 9);
});

describe('ground and figures with which no pass can be driven', () => {
  const square = groundOf(rectangle(0, 0, 20, 20));
  const wrong: readonly (readonly [string, object])[] = [
    ['speed', { speedMph: 0 }],
    ['speed', { speedMph: -3 }],
    ['speed', { speedMph: Number.NaN }],
    ['swath', { swathFt: 0 }],
    ['swath', { swathFt: Number.POSITIVE_INFINITY }],
    ['trim swath', { trimSwathFt: -1 }],
    ['overlap', { overlapFt: 4 }],
    ['overlap', { overlapFt: -0.5 }],
    ['trim passes', { trimPasses: 1.5 }],
    ['trim passes', { trimPasses: -1 }],
    ['turn', { turnSec: -1 }],
    ['speed between passes', { transitMph: 0 }],
    ['Marking', { mark: { what: 'foam', flOzPer1000Ft: 0 } }],
    ['Sections', { sectionsFt: [1, 1] }],
  ];
  for (const [word, change] of wrong) {
    it(`${JSON.stringify(change)} is refused with its name`, () => {
      const plan = planPasses(square, { ...headOf(1.22), ...change }, {}, 'lawn');
      expect(plan).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range', where: 'lawn' } });
      expect(plan.ok ? '' : plan.error.detail).toContain(word);
    });
  }

  it('a strip narrower than the swath is all hand trim, and says so', () => {
    const plan = planned(groundOf(rectangle(0, 0, 50, 1)), headOf(1.83));
    expect(plan.path).toEqual([]);
    expect(plan.minutes).toBe(0);
    expect(plan.handTrimSqM).toBeCloseTo(50, 6);
    expect(plan.missedShare).toBe(1);
    expect(plan.angleDeg).toBeNull();
    expect(plan.notes.map((each) => each.code)).toEqual(['swath-wider-than-ground']);
  });

  it('ground that narrows has its narrow end left to the hand', () => {
    const wedge: Corner[] = [
      [0, 0],
      [40, 0],
      [40, 0.8],
      [20, 0.8],
      [20, 15],
      [0, 15],
    ];
    const plan = planned(groundOf(wedge), headOf(1.22));
    // The neck of 20 x 0.8 m, and corners.
    expect(plan.handTrimSqM).toBeGreaterThan(15.5);
    expect(plan.handTrimSqM).toBeLessThan(17.5);
    expect(plan.notes.map((each) => each.code)).toContain('hand-trim-left');
  });

  it('no ground gives a plan without anything', () => {
    const plan = planned(EMPTY_REGION, headOf(1.22));
    expect(plan).toMatchObject({ path: [], swathCount: 0, minutes: 0, missedShare: 0, areaSqM: 0, notes: [] });
  });
});
