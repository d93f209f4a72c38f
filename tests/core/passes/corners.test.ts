import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { intersection, type Region, regionArea } from '../../../core/geometry/index.ts';
import { freeAhead, underBar } from '../../../core/passes/bar.ts';
import { barOf } from '../../../core/passes/corners.ts';
import type { PassPlan } from '../../../core/passes/index.ts';
import { wholePasses } from '../../../core/passes/legs.ts';
import { sidesOf } from '../../../core/passes/sides.ts';
import { distanceM } from '../../../core/passes/visits.ts';
import { type Corner, rectangle } from '../geometry/shapes.ts';
import { convexCorners, groundOf, headOf, houseLawn, lShape, planned, turned, unevenLawn } from './grounds.ts';

const squared = (ground: Region, swathM: number, trimPasses = 1): PassPlan =>
  planned(ground, headOf(swathM, { squareCorners: true, trimPasses }));
const round = (ground: Region, swathM: number, trimPasses = 1): PassPlan =>
  planned(ground, headOf(swathM, { trimPasses }));
const wayM = (plan: PassPlan): number => plan.sprayedM + plan.unsprayedM;

/** A regular polygon about the origin, its first corner to the east. */
const regular = (corners: number, radius: number): Corner[] =>
  Array.from({ length: corners }, (_, at) => {
    const angle = (2 * Math.PI * at) / corners;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

/** What a round turn by an angle leaves: two right-angled triangles beside a slice of the disc. */
const roundRest = (widthM: number, turn: number): number => (widthM ** 2 / 4) * (Math.tan(turn / 2) - turn / 2);

describe('corners driven out', () => {
  for (const degrees of [0, 12, 33, 90, 121]) {
    it(`leave nothing in the right angles of a rectangle turned by ${degrees} degrees`, () => {
      const ground = groundOf(turned(rectangle(0, 0, 30, 20), degrees));
      const [before, after] = [round(ground, 1.2), squared(ground, 1.2)];
      expect(before.handTrimSqM).toBeCloseTo(4 * roundRest(1.2, Math.PI / 2), 2);
      expect(before.cornerCount).toBe(0);
      expect(after.cornerCount).toBe(4);
      expect(after.handTrimSqM).toBeLessThan(0.001);
      expect(after.offTargetShare).toBeLessThan(1e-6);
      // Half a width on to the edge, and back; a turn for each.
      expect(after.sprayedM - before.sprayedM).toBeCloseTo(4 * 0.6, 3);
      expect(after.unsprayedM - before.unsprayedM).toBeCloseTo(4 * 0.6, 3);
      expect(after.turnCount).toBe(before.turnCount + 4);
      expect(after.minutes - before.minutes).toBeCloseTo((4 * 1.2) / 2 / 60 + (4 * 3) / 60, 4);
      expect(after.appliedSqM).toBeCloseTo(1.2 * after.sprayedM, 6);
    });
  }

  it('leave less than half of it in wider angles, and all where that is little', () => {
    // Five turns by 72 degrees leave 0.0246 of the square of the width each.
    const pentagon = groundOf(regular(5, 15));
    const [before, after] = [round(pentagon, 1.5), squared(pentagon, 1.5)];
    expect(before.handTrimSqM).toBeCloseTo(5 * roundRest(1.5, (2 * Math.PI) / 5), 2);
    expect(after.cornerCount).toBe(5);
    expect(after.handTrimSqM).toBeLessThan(before.handTrimSqM / 2);
    // Eight turns by 45 degrees leave 0.0054 of it each: not worth a run.
    expect(squared(groundOf(regular(8, 14)), 1.5).cornerCount).toBe(0);
  });

  it('are driven out from both sides where the angle is sharp, as far as the width fits', () => {
    // Angles of 80 and 100 degrees: the swath ends at the corner of the ground, or where its far end meets the other side; both
    // are half the width times tan 40 beyond the corner of the pass.
    const [cosine, sine] = [Math.cos((80 * Math.PI) / 180), Math.sin((80 * Math.PI) / 180)];
    const slanted = groundOf([
      [0, 0],
      [30, 0],
      [30 + 20 * cosine, 20 * sine],
      [20 * cosine, 20 * sine],
    ]);
    const [before, after] = [round(slanted, 1.5), squared(slanted, 1.5)];
    const runs = after.path.filter((leg) => leg.kind === 'corner');
    expect(runs).toHaveLength(2 * 1 + 2 * 2);
    for (const { points } of runs) {
      expect(distanceM(points[0]!, points[1]!)).toBeCloseTo(0.75 * Math.tan((40 * Math.PI) / 180), 3);
    }
    expect(after.handTrimSqM).toBeLessThan(before.handTrimSqM / 3);
    expect(after.offTargetShare).toBeLessThan(1e-5);
  });

  it('are left where no run gets far: in an angle of 60 degrees', () => {
    const triangle = groundOf(regular(3, 15));
    expect(squared(triangle, 1.2).cornerCount).toBe(0);
    expect(squared(triangle, 1.2).handTrimSqM).toBe(round(triangle, 1.2).handTrimSqM);
  });

  it('between two trim passes as well', () => {
    // Pass 1 shares 0.1 m with the edge pass; a disc of 2 m leaves a corner inside that.
    const ground = groundOf(rectangle(0, 0, 40, 30));
    const plan = squared(ground, 2, 2);
    expect(plan.cornerCount).toBe(8);
    expect(plan.handTrimSqM).toBeLessThan(0.01);
  });

  const grounds: readonly (readonly [string, Region])[] = [
    ['a lawn round a house', houseLawn()],
    ['an L', lShape()],
    ...[3, 4, 5, 6].map((seed) => [`uneven ground ${seed}`, unevenLawn(seed)] as const),
    ...[1, 2, 3].map((seed) => [`convex ground ${seed}`, groundOf(convexCorners(createRandom(seed), 22))] as const),
  ];

  it.each(grounds)('on %s leave no more to the hand, and treat nothing outside', (_, ground) => {
    for (const swathM of [0.53, 1.22, 1.83]) {
      const [before, after] = [round(ground, swathM, 2), squared(ground, swathM, 2)];
      expect(after.handTrimSqM).toBeLessThanOrEqual(before.handTrimSqM + 1e-9);
      expect(after.offTargetShare).toBeLessThan(0.0001);
      expect(regionArea(after.handTrim)).toBeCloseTo(after.handTrimSqM, 9);
      for (const { kind, points, widthM } of after.path) {
        if (kind !== 'corner') continue;
        const bar = barOf({ from: points[0]!, to: points[1]! }, widthM);
        expect(regionArea(bar) - regionArea(intersection(bar, ground))).toBeLessThan(0.001);
      }
    }
  });

  it.each(grounds)('on %s change neither swaths nor trim passes, and each costs a turn', (_, ground) => {
    const [before, after] = [round(ground, 1.22, 2), squared(ground, 1.22, 2)];
    const [plain, broken] = [wholePasses(before.path), wholePasses(after.path)];
    const lines = (legs: typeof plain) => legs.filter((leg) => leg.kind !== 'corner').map((leg) => leg.points);
    expect(lines(broken)).toEqual(lines(plain));
    expect(after.trimCount).toBe(before.trimCount);
    expect(after.swathCount).toBe(before.swathCount);
    expect(after.turnCount).toBe(before.turnCount + after.cornerCount);
    const runsM = after.path.reduce(
      (sum, { kind, points }) => sum + (kind === 'corner' ? distanceM(points[0]!, points[1]!) : 0),
      0,
    );
    expect(wayM(after) - wayM(before)).toBeCloseTo(2 * runsM, 3);
  });

  it('do not depend on where the outline begins', () => {
    const ground = lShape();
    const other = { ...ground, paths: ground.paths.map((path) => [...path.slice(2), ...path.slice(0, 2)]) };
    const [one, two] = [squared(ground, 1.22), squared(other, 1.22)];
    expect(two.cornerCount).toBe(one.cornerCount);
    expect(two.handTrimSqM).toBeCloseTo(one.handTrimSqM, 5);
    expect(wayM(two)).toBeCloseTo(wayM(one), 1);
  });

  it('with the edge on the other side, are the same', () => {
    const ground = houseLawn();
    const left = planned(ground, headOf(1.22, { squareCorners: true, shieldedSide: 'left' }));
    const right = planned(ground, headOf(1.22, { squareCorners: true, shieldedSide: 'right' }));
    expect(left.cornerCount).toBe(right.cornerCount);
    expect(left.minutes).toBeCloseTo(right.minutes, 6);
  });

  it('are none without trim passes', () => {
    expect(squared(groundOf(rectangle(0, 0, 30, 20)), 1.2, 0).cornerCount).toBe(0);
  });
});

describe('a bar driven straight', () => {
  const sides = sidesOf(groundOf(rectangle(0, 0, 10, 6)));

  it('goes until a side is in its way; one along which it runs is not', () => {
    expect(freeAhead({ x: 2, y: 1 }, { x: 1, y: 0 }, sides, 1)).toBeCloseTo(8, 9);
    expect(freeAhead({ x: 2, y: 1 }, { x: -1, y: 0 }, sides, 1)).toBeCloseTo(2, 9);
    // At 45 degrees its far end meets the side first: 4 - 1 across, less half the bar on the slant.
    const slant = { x: Math.SQRT1_2, y: Math.SQRT1_2 };
    expect(freeAhead({ x: 3, y: 2 }, slant, sides, 1)).toBeCloseTo(4 * Math.SQRT2 - 1, 3);
    expect(freeAhead({ x: 20, y: 2 }, { x: 1, y: 0 }, sides, 1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('goes over as much ground as the rectangle and the ground have in common', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const random = createRandom(seed);
      const ground = seed % 2 === 0 ? unevenLawn(seed) : houseLawn();
      const angle = 2 * Math.PI * random.unit();
      const way = { x: Math.cos(angle), y: Math.sin(angle) };
      const from = { x: 20 * random.unit(), y: 20 * random.unit() };
      const lengthM = 1 + 15 * random.unit();
      const bar = barOf({ from, to: { x: from.x + lengthM * way.x, y: from.y + lengthM * way.y } }, 3);
      const { areaSqM } = underBar(ground, from, way, 1.5, lengthM);
      expect(areaSqM).toBeCloseTo(regionArea(intersection(bar, ground)), 3);
    }
  });
});
