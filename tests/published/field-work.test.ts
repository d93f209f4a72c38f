import { describe, expect, it } from 'vitest';
import type { AreaWorking, PlainShape } from '../../core/book/index.ts';
import { workedArea } from '../../core/field-work/index.ts';
import { METRES_PER_FOOT, SQUARE_FEET_PER_ACRE, SQUARE_METRES_PER_SQUARE_FOOT } from '../../core/units/index.ts';

/** Printed answers for areas measured by tape or wheel, each with its source. */

const ft = (metres: number): number => metres / METRES_PER_FOOT;
const sqM = (areaSqFt: number): number => areaSqFt * SQUARE_METRES_PER_SQUARE_FOOT;

function area(working: AreaWorking): number {
  const worked = workedArea(working, 'us');
  if (!worked.ok) throw new Error(worked.error.detail);
  return worked.value.areaSqFt;
}

const add = { take: 'add', note: '' } as const;
const shape = (one: PlainShape): number => area({ kind: 'shapes', shapes: [one] });

describe('plain shapes', () => {
  it('1,320 x 120 ft are 158,400 ft2, 3.6 acres (National Pesticide Applicator Certification Core Manual, ch. 11)', () => {
    const found = shape({ ...add, kind: 'rectangle', lengthFt: 1320, widthFt: 120 });
    expect(found).toBe(158_400);
    expect(found / SQUARE_FEET_PER_ACRE).toBeCloseTo(3.6, 1);
  });

  it('a circle 40 ft across is 1,256 ft2 (S. Stone-Schmidt, UC ANR; with 3.14)', () => {
    const found = shape({ ...add, kind: 'circle', diameterFt: 40 });
    expect(found).toBeCloseTo(400 * Math.PI, 9);
    expect(Math.abs(found - 1256)).toBeLessThan(1);
  });

  it('a triangle of base 40 and height 80 ft is 1,600 ft2, a rectangle of 50 x 30 ft 1,500 (Virginia Turfgrass Council)', () => {
    expect(shape({ ...add, kind: 'triangle', baseFt: 40, heightFt: 80 })).toBe(1600);
    expect(shape({ ...add, kind: 'rectangle', lengthFt: 50, widthFt: 30 })).toBe(1500);
  });

  it('a trapezoid with sides of 19.4 and 39.6, 25 apart, is 737.5 (surveying thread, mathhelpforum.com 126576)', () => {
    expect(shape({ ...add, kind: 'trapezoid', sideFt: 19.4, otherSideFt: 39.6, apartFt: 25 })).toBeCloseTo(737.5, 9);
  });

  it('360 x 160 ft are 57,600 ft2, 1.32 acres (football field with its end zones)', () => {
    const found = shape({ ...add, kind: 'rectangle', lengthFt: 360, widthFt: 160 });
    expect(found).toBe(57_600);
    expect(found / SQUARE_FEET_PER_ACRE).toBeCloseTo(1.32, 2);
  });

  it('an oval of 23 x 17 m is 307.1 m2; the printed 312.8 uses 0.8 for pi / 4 (informedfarmers.com, measuring turf)', () => {
    const found = sqM(shape({ ...add, kind: 'ellipse', lengthFt: ft(23), widthFt: ft(17) }));
    expect(found).toBeCloseTo(307.1, 1);
    expect((found / (Math.PI / 4)) * 0.8).toBeCloseTo(312.8, 6);
  });
});

describe('offsets and radii', () => {
  it("eight offsets at 30 m are 781 m2 by Simpson's rule and one trapezoid (surveying question, quizall.hivanix.in 64713)", () => {
    const offsetsFt = [0, 2.65, 3.8, 3.75, 4.65, 3.6, 5, 5.8].map(ft);
    expect(sqM(area({ kind: 'offsets', rule: 'simpson', intervalFt: ft(30), offsetsFt }))).toBeCloseTo(781, 6);
  });

  it('sixteen radii with a mean of 9.86 ft are 305.27 ft2, with 3.14 (How to Measure a Putting Green, abcdocz.com 187946)', () => {
    const radiiFt = [7.1, 8.9, 9.7, 10.9, 12.4, 11.7, 11.8, 9.9, 6.8, 8.2, 9.7, 10.4, 12, 11.4, 8.9, 8];
    expect(3.14 * 9.86 ** 2).toBeCloseTo(305.27, 2);
    expect(Math.abs(area({ kind: 'mean-radius', radiiFt }) / 305.27 - 1)).toBeLessThan(0.0015);
  });
});
