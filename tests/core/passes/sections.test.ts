import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { Region } from '../../../core/geometry/index.ts';
import { type Leg, localRates, type PassHead, planPasses } from '../../../core/passes/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { FEET_PER_METRE, groundOf, headOf, houseLawn, isOn, lShape, planned, treats, unevenLawn } from './grounds.ts';

const feet = (metres: readonly number[]) => metres.map((each) => each * FEET_PER_METRE);
const SHAPES: readonly (readonly [string, () => Region])[] = [
  ['a lawn round a house', houseLawn],
  ['an L', lShape],
  ['uneven ground', () => unevenLawn(7)],
];
const BOOMS: readonly (readonly [string, readonly number[]])[] = [
  ['three equal sections', [0.6, 0.6, 0.6]],
  ['sections that differ', [0.3, 0.9, 0.6]],
  ['many narrow ones', [0.05, 0.35, 0.5, 0.5, 0.35, 0.05]],
];

/** Whether a place lies under an open section, by the leg alone: sections from the left, metres from its beginning. */
function sprays(leg: Leg, sections: readonly number[], x: number, y: number): boolean {
  if (leg.open === undefined) return treats(leg, x, y);
  const [from, to] = [leg.points[0]!, leg.points[1]!];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
  const left = ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length;
  return leg.open.some(({ section, fromM, toM }) => {
    const high = leg.widthM / 2 - sections.slice(0, section).reduce((sum, each) => sum + each, 0);
    return along >= fromM && along <= toM && left <= high + 1e-9 && left >= high - sections[section]! - 1e-9;
  });
}

describe.each(SHAPES)('boom sections on %s', (_, make) => {
  it.each(BOOMS)('%s: shut only where the ground is treated already', (_name, sections) => {
    const ground = make();
    const head: PassHead = headOf(1.8, { trimSwathFt: FEET_PER_METRE });
    const whole = planned(ground, head);
    const plan = planned(ground, { ...head, sectionsFt: feet(sections) });
    expect(plan.sprayedM).toBe(whole.sprayedM);
    expect(plan.missedShare).toBe(whole.missedShare);
    expect(plan.appliedSqM).toBeLessThan(whole.appliedSqM);
    expect(plan.appliedSqM).toBeGreaterThanOrEqual(plan.areaSqM - plan.handTrimSqM);
    const random = createRandom(3);
    const { west, south, east, north } = ground.box;
    let looked = 0;
    for (let place = 0; place < 3000; place += 1) {
      const x = (west + random.unit() * (east - west)) / 100_000;
      const y = (south + random.unit() * (north - south)) / 100_000;
      if (!isOn(ground, x, y) || !whole.path.some((leg) => treats(leg, x, y))) continue;
      looked += 1;
      // Where trim passes meet, curves are drawn as many short sides: places within 1 mm of an edge are not told apart.
      const isSprayed = plan.path.some((leg) =>
        [-0.001, 0, 0.001].some((off) => sprays(leg, sections, x + off, y) || sprays(leg, sections, x, y + off)),
      );
      expect(isSprayed, `${x}, ${y}`).toBe(true);
    }
    expect(looked).toBeGreaterThan(500);
  });
});

it('on a rectangle a section that lies in the shared band is shut, to the square metre', () => {
  // 20 x 5 m in lanes along it without trim: 5 - 1.2 = 3.8 m beyond the first, lanes 0.95 m apart, so neighbours share 0.25 m.
  const ground = groundOf(rectangle(0, 0, 20, 5));
  const head = headOf(1.2, { trimPasses: 0, overlapFt: 0.2 * FEET_PER_METRE });
  expect(planned(ground, head, 0).appliedSqM).toBeCloseTo(5 * 20 * 1.2, 6);
  // Edges of 0.25 m: one of the two is shut in every lane but one.
  const edged = planned(ground, { ...head, sectionsFt: feet([0.25, 0.7, 0.25]) }, 0);
  expect(edged.appliedSqM).toBeCloseTo(20 * 5, 3);
  expect(localRates(ground, edged, [0.25, 0.7, 0.25]).average).toBeCloseTo(1, 5);
  // Edges of 0.3 m reach beyond the band and stay open.
  const wider = planned(ground, { ...head, sectionsFt: feet([0.3, 0.6, 0.3]) }, 0);
  expect(wider.appliedSqM).toBeCloseTo(5 * 20 * 1.2, 6);
});

describe('local rates', () => {
  it('are one where nothing overlaps, two in a shared band', () => {
    const ground = groundOf(rectangle(0, 0, 20, 6));
    const even = planned(ground, headOf(1.2, { trimPasses: 0, overlapFt: 0 }), 0);
    expect(localRates(ground, even)).toMatchObject({ worst: 1, repeatedShare: 0 });
    expect(localRates(ground, even).average).toBeCloseTo(1, 6);
    const shared = planned(ground, headOf(1.2, { trimPasses: 0 }), 0);
    const rates = localRates(ground, shared);
    expect(rates.worst).toBe(2);
    // Six lanes of 1.2 m over 6 m share 1.2 m of it, in whole rows of the raster.
    expect(Math.abs(rates.repeatedShare - 0.2)).toBeLessThan((5 * rates.stepM) / 6);
    expect(rates.average).toBeCloseTo(1.2, 6);
  });

  it('agree with places drawn at random, whatever the shape', () => {
    for (const [, make] of SHAPES) {
      const ground = make();
      const plan = planned(ground, headOf(1.22));
      const rates = localRates(ground, plan);
      const random = createRandom(11);
      const { west, south, east, north } = ground.box;
      const counts = { treated: 0, again: 0, worst: 0 };
      for (let place = 0; place < 6000; place += 1) {
        const x = (west + random.unit() * (east - west)) / 100_000;
        const y = (south + random.unit() * (north - south)) / 100_000;
        if (!isOn(ground, x, y)) continue;
        const passes = plan.path.filter((leg) => treats(leg, x, y)).length;
        if (passes > 0) counts.treated += 1;
        if (passes > 1) counts.again += 1;
        counts.worst = Math.max(counts.worst, passes);
      }
      expect(Math.abs(rates.repeatedShare - counts.again / counts.treated)).toBeLessThan(0.02);
      expect(rates.worst).toBeGreaterThanOrEqual(counts.worst);
      expect(rates.average).toBeGreaterThan(1);
    }
  });

  it('are none where nothing is treated', () => {
    const strip = groundOf(rectangle(0, 0, 30, 1));
    expect(localRates(strip, planned(strip, headOf(1.83)))).toEqual({
      average: 0,
      worst: 0,
      repeatedShare: 0,
      stepM: 0,
    });
  });
});

it('sections that do not make the swath are refused', () => {
  for (const sectionsFt of [[], [3, 2], [-1, 7], [Number.NaN, 3]]) {
    const plan = planPasses(groundOf(rectangle(0, 0, 20, 20)), { ...headOf(1.83), swathFt: 6, sectionsFt }, {}, 'lawn');
    expect(plan).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range', where: 'lawn' } });
  }
});

/** Twice the signed area of a closed way: positive anticlockwise. */
const turning = (leg: Leg) =>
  leg.points.reduce((sum, to, at) => {
    const from = leg.points[at - 1] ?? to;
    return sum + from.x * to.y - to.x * from.y;
  }, 0);

it('the shielded side faces the edge, outside and at obstacles', () => {
  const ground = groundOf(rectangle(0, 0, 40, 30), [rectangle(15, 10, 25, 20)]);
  for (const [shieldedSide, sign] of [
    ['right', 1],
    ['left', -1],
  ] as const) {
    const trims = planned(ground, headOf(1.22, { trimPasses: 1, shieldedSide })).path.filter(
      (leg) => leg.kind === 'trim',
    );
    const outer = trims.filter((leg) => leg.points.some((point) => point.x < 5));
    const inner = trims.filter((leg) => !outer.includes(leg));
    expect(outer.map((leg) => Math.sign(turning(leg)))).toEqual([sign]);
    expect(inner.map((leg) => Math.sign(turning(leg)))).toEqual([-sign]);
  }
});

it('the way from one part to the next goes round obstacles', () => {
  const ground = groundOf([...rectangle(0, 0, 10, 10)]);
  const apart = { ...ground, paths: [...ground.paths, ...groundOf(rectangle(30, 0, 40, 10)).paths] };
  const both: Region = { ...apart, box: { ...ground.box, east: 40 * 100_000 } };
  const house = groundOf(rectangle(14, -20, 26, 30));
  const between = (plan: ReturnType<typeof planned>) =>
    plan.path.find((leg) => leg.kind === 'transit' && leg.points[0]!.x < 11 && leg.points.at(-1)!.x > 29)!;
  const options = { angleDeg: 90 };
  const straight = planPasses(both, headOf(1.22), options);
  const round = planPasses(both, headOf(1.22), { ...options, obstacles: house });
  if (!straight.ok || !round.ok) throw new Error('no passes');
  const way = between(round.value);
  expect(way.points.length).toBeGreaterThan(2);
  // The middle of every side of the way lies outside the house.
  for (const [at, to] of way.points.entries()) {
    const from = way.points[at - 1] ?? to;
    const [x, y] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
    expect(x > 14.001 && x < 25.999 && y > -19.999 && y < 29.999).toBe(false);
  }
  expect(round.value.unsprayedM).toBeGreaterThan(straight.value.unsprayedM + 15);
});
