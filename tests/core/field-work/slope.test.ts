import { describe, expect, it } from 'vitest';
import { slopeWorkingWords, workedSlope } from '../../../core/field-work/index.ts';

describe('workedSlope', () => {
  it.each([
    // atan(1/3) = 18.435 degrees; 4 ft up on 15 ft are 26.7 %, 14.9 degrees
    [1, 3, 18.4349],
    [4, 15, 14.9314],
    [0, 10, 0],
    [7, 7, 45],
  ])('a rise of %d on a run of %d ft', (riseFt, runFt, degrees) => {
    const worked = workedSlope({ kind: 'rise-run', riseFt, runFt }, 'us');
    expect(worked?.ok && worked.value.slopeDeg).toBeCloseTo(degrees, 3);
  });

  it('shows the arithmetic in the units that are read', () => {
    const us = workedSlope({ kind: 'rise-run', riseFt: 4, runFt: 15 }, 'us');
    expect(us?.ok && us.value.lines).toEqual(['rise 4 / run 15 ft: 26.7 % = 14.9°']);
    const metric = workedSlope({ kind: 'rise-run', riseFt: 1 / 0.3048, runFt: 4 / 0.3048 }, 'metric');
    expect(metric?.ok && metric.value.lines).toEqual(['rise 1 / run 4 m: 25 % = 14°']);
  });

  it('takes the degrees of a level, whichever way it leans', () => {
    const worked = workedSlope({ kind: 'level', degrees: -15 }, 'us');
    expect(worked?.ok && worked.value).toEqual({ slopeDeg: 15, lines: ['level shows -15°: 26.8 % = 15°'] });
  });

  it('refuses what is steeper than turf', () => {
    for (const working of [
      { kind: 'rise-run', riseFt: 20, runFt: 10 },
      { kind: 'level', degrees: 75 },
    ] as const) {
      expect(workedSlope(working, 'us')).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range' } });
    }
  });

  it('has nothing to work out for elevations', () => {
    expect(workedSlope({ kind: 'elevation', source: 'county lidar' }, 'us')).toBeNull();
  });
});

describe('slopeWorkingWords', () => {
  it('names the way a slope was found', () => {
    expect(slopeWorkingWords(undefined)).toBe('entered');
    expect(slopeWorkingWords({ kind: 'level', degrees: 4 })).toBe('level');
    expect(slopeWorkingWords({ kind: 'rise-run', riseFt: 1, runFt: 9 })).toBe('rise over run');
    expect(slopeWorkingWords({ kind: 'elevation', source: 'lidar' })).toBe('elevations: lidar');
  });
});
