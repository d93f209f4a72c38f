import { describe, expect, it } from 'vitest';
import { directionOptions } from '../../../core/passes/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { groundOf, headOf, planned, planWith } from './grounds.ts';

const steep = { slopeDeg: 12 };
const uphill = { upAndDownFromDeg: 10 };

describe('the direction in which swaths are to run', () => {
  it('is searched where neither zone nor head says anything', () => {
    expect(directionOptions(steep, null)).toEqual({});
    expect(directionOptions({ ...steep, downhillDeg: 90 }, {})).toEqual({});
  });

  it('is up and down from the slope on that the head names: a fall to the north-east is a line at 45 degrees from east', () => {
    expect(directionOptions({ ...steep, downhillDeg: 45 }, uphill)).toEqual({ angleDeg: 45 });
    expect(directionOptions({ ...steep, downhillDeg: 225 }, uphill)).toEqual({ angleDeg: 45 });
    expect(directionOptions({ slopeDeg: 10, downhillDeg: 0 }, uphill)).toEqual({ angleDeg: 90 });
    expect(directionOptions({ slopeDeg: 9.9, downhillDeg: 0 }, uphill)).toEqual({});
  });

  it('is the one fixed for the zone, whatever the slope: bearing 100 is 10 degrees south of east', () => {
    expect(directionOptions({ ...steep, downhillDeg: 45, swathDeg: 100 }, uphill)).toEqual({ angleDeg: 170 });
  });

  it('is told to be missing where the ground is steep and nobody knows which way it falls', () => {
    expect(directionOptions(steep, uphill)).toEqual({ isDownhillUnknown: true });
    const plan = planWith(groundOf(rectangle(0, 0, 40, 20)), headOf(2), { isDownhillUnknown: true });
    expect(plan.notes.map((each) => each.code)).toEqual(['downhill-unknown']);
    expect(plan.angleDeg).toBe(planned(groundOf(rectangle(0, 0, 40, 20)), headOf(2)).angleDeg);
  });

  it('is kept by the swaths: down a lot of 40 x 20 m that falls along its short side they are more', () => {
    const lot = groundOf(rectangle(0, 0, 40, 20));
    const options = directionOptions({ ...steep, downhillDeg: 180 }, uphill);
    const down = planWith(lot, headOf(2), options);
    expect(down.angleDeg).toBeCloseTo(90, 9);
    expect(down.swathCount).toBeGreaterThan(planned(lot, headOf(2)).swathCount);
    for (const { kind, points } of down.path) {
      if (kind === 'swath') expect(points[0]!.x).toBeCloseTo(points[1]!.x, 9);
    }
  });
});

describe('a marker', () => {
  const lot = groundOf(rectangle(0, 0, 40, 20));
  const FEET_PER_METRE = 1 / 0.3048;

  it('of foam is used along the straight swaths alone, dye along all that is sprayed', () => {
    const plain = planned(lot, headOf(2));
    expect(plain.mark).toBeNull();
    const foam = planned(lot, headOf(2, { mark: { what: 'foam', flOzPer1000Ft: 4 } }));
    expect(foam.mark!.markedM).toBe(plain.swathM);
    expect(foam.mark!.flOz).toBeCloseTo((plain.swathM * FEET_PER_METRE * 4) / 1000, 9);
    const dye = planned(lot, headOf(2, { mark: { what: 'dye', flOzPer1000Ft: 4 } }));
    expect(dye.mark!.markedM).toBe(plain.sprayedM);
    expect(dye.mark!.flOz).toBeGreaterThan(foam.mark!.flOz);
  });
});
