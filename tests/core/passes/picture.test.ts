import { describe, expect, it } from 'vitest';
import { regionArea } from '../../../core/geometry/index.ts';
import { passPicture } from '../../../core/passes/index.ts';
import { overlapOf } from '../../../core/passes/picture.ts';
import { rectangle, ringAt } from '../geometry/shapes.ts';
import { groundOf, headOf, houseLawn, lShape, planned } from './grounds.ts';

const SQUARE_FEET = 1 / 0.09290304;

describe('ground gone over twice', () => {
  it('is the bands that neighbouring swaths share, where there are no trim passes', () => {
    // 20 x 10 m by swaths of 2 m that share at least 0.5 m: 7 swaths, so 6 bands of (7 x 2 - 10) / 6 = 2/3 m.
    const plan = planned(groundOf(rectangle(0, 0, 20, 10)), headOf(2, { trimPasses: 0, overlapFt: 0.5 / 0.3048 }));
    expect(plan.swathCount).toBe(7);
    expect(regionArea(overlapOf(plan.path))).toBeCloseTo(20 * 4, 2);
  });

  it.each([
    ['a lawn round a house', houseLawn],
    ['an L', lShape],
  ])('on %s, at most twice anywhere, is all that comes out beyond the ground treated', (_, make) => {
    const ground = make();
    const plan = planned(ground, headOf(1.2, { trimPasses: 1 }));
    const treated = plan.areaSqM - plan.handTrimSqM;
    const again = regionArea(overlapOf(plan.path));
    // Three times over, as where two swaths meet the trim pass, counts once here.
    expect(again).toBeGreaterThan(0.02 * treated);
    expect(again).toBeLessThanOrEqual(plan.appliedSqM - treated + 0.01);
  });
});

it('trim passes broken off for runs into corners share no more ground than those in one piece', () => {
  const ground = groundOf(rectangle(0, 0, 30, 20));
  const [round, square] = [false, true].map((squareCorners) =>
    planned(ground, headOf(1.2, { trimPasses: 1, squareCorners })),
  );
  const again = regionArea(overlapOf(square!.path)) - regionArea(overlapOf(round!.path));
  // Each run of 0.6 x 1.2 m goes over ground that the pass has treated once, but for the rest of the corner; of it the swaths have
  // treated a band of 0.1 m already.
  const onceSqM = 4 * (0.6 * 1.2 - (1 - Math.PI / 4) * 0.6 ** 2);
  expect(again).toBeLessThan(onceSqM + 0.01);
  expect(again).toBeGreaterThan(onceSqM - 4 * 0.6 * 0.11);
});

describe('a picture of passes', () => {
  const ring = ringAt([-83, 40], rectangle(0, 0, 60, 30));
  const pictureOf = (slopeDeg: number, squareCorners = false) => {
    const head = headOf(1.5, { turnSec: 5, transitMph: 6, squareCorners });
    const picture = passPicture({ outline: [[ring]], obstacles: [] }, head, {}, slopeDeg, 'zone');
    if (!picture.ok || picture.value === null) throw new Error('no picture');
    return picture.value;
  };

  it.each([false, true])('tells every leg, and they add up to the whole; corners driven out: %s', (squareCorners) => {
    const picture = pictureOf(0, squareCorners);
    expect(picture.legs.filter((each) => each.kind === 'corner')).toHaveLength(picture.cornerCount);
    expect(picture.cornerCount > 0).toBe(squareCorners);
    expect(picture.legs.filter((each) => each.kind === 'swath')).toHaveLength(picture.swathCount);
    const sum = (of: (leg: (typeof picture.legs)[number]) => number) =>
      picture.legs.reduce((all, leg) => all + of(leg), 0);
    expect(sum((leg) => leg.coveredSqFt)).toBeCloseTo(picture.coveredSqFt, 3);
    expect(sum((leg) => leg.lengthFt)).toBeCloseTo(picture.sprayedFt + picture.unsprayedFt, 3);
    const last = picture.legs.at(-1)!;
    expect(last.fromMinutes + last.minutes).toBeCloseTo(picture.minutes, 9);
    for (const [index, leg] of picture.legs.entries()) {
      const before = picture.legs[index - 1];
      if (before !== undefined)
        expect(leg.fromMinutes).toBeGreaterThanOrEqual(before.fromMinutes + before.minutes - 1e-9);
    }
    expect(picture.areaSqFt).toBeCloseTo(60 * 30 * SQUARE_FEET, 0);
    expect(picture.bearingDeg).toBeCloseTo(90, 1);
  });

  it('of steep ground has more ground and minutes by as much', () => {
    const [level, steep] = [pictureOf(0), pictureOf(20)];
    const steeper = 1 / Math.cos((20 * Math.PI) / 180);
    expect(steep.areaSqFt / level.areaSqFt).toBeCloseTo(steeper, 9);
    expect(steep.minutes / level.minutes).toBeCloseTo(steeper, 9);
    expect(steep.sprayedFt).toBe(level.sprayedFt);
  });

  it('is none without an outline, and an error where the head makes no sense', () => {
    expect(passPicture({ outline: [], obstacles: [] }, headOf(1.5), {}, 0, 'zone')).toEqual({ ok: true, value: null });
    expect(
      passPicture({ outline: [[ring]], obstacles: [] }, headOf(1.5, { speedMph: 0 }), {}, 0, 'zone'),
    ).toMatchObject({ ok: false });
  });
});
