import { describe, expect, it } from 'vitest';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { workedArea, workingWords } from '../../../core/field-work/index.ts';
import { METRES_PER_FOOT, SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';

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
  it.each([
    [{ ...add, kind: 'rectangle', lengthFt: 12, widthFt: 5 }, 60],
    [{ ...add, kind: 'triangle', baseFt: 12, heightFt: 5 }, 30],
    [{ ...add, kind: 'circle', diameterFt: 2 }, Math.PI],
    [{ ...add, kind: 'trapezoid', sideFt: 4, otherSideFt: 8, apartFt: 5 }, 30],
    // A circle is the oval with equal axes.
    [{ ...add, kind: 'ellipse', lengthFt: 2, widthFt: 2 }, Math.PI],
  ] as const)('%o', (one, areaSqFt) => {
    expect(shape(one)).toBeCloseTo(areaSqFt, 12);
  });

  it('adds and takes off, and shows each step', () => {
    const worked = workedArea(
      {
        kind: 'shapes',
        shapes: [
          { ...add, kind: 'rectangle', lengthFt: 100, widthFt: 60, note: 'back' },
          { take: 'subtract', note: 'pool', kind: 'circle', diameterFt: 20 },
        ],
      },
      'us',
    );
    expect(worked).toMatchObject({
      ok: true,
      value: {
        lines: [
          'rectangle, back: 100 × 60 = 6,000 ft²',
          'less circle, pool: π × (20 / 2)² = 314.16 ft²',
          'together 5,685.84 ft²',
        ],
      },
    });
    expect(worked.ok && worked.value.areaSqFt).toBeCloseTo(6000 - 100 * Math.PI, 9);
  });

  it('refuses to take off more than there is', () => {
    const shapes = [{ kind: 'circle', diameterFt: 20, take: 'subtract', note: '' }] as const;
    expect(workedArea({ kind: 'shapes', shapes }, 'us')).toMatchObject({
      ok: false,
      error: { code: 'quantity-out-of-range' },
    });
  });
});

describe('offsets', () => {
  /** Offsets in metres at 30 m; the printed answer is 781 m2 (surveying question, quizall.hivanix.in 64713). */
  const printed = [0, 2.65, 3.8, 3.75, 4.65, 3.6, 5, 5.8];
  const working = (rule: 'simpson' | 'trapezoid', offsetsM: readonly number[] = printed): AreaWorking => ({
    kind: 'offsets',
    rule,
    intervalFt: ft(30),
    offsetsFt: offsetsM.map(ft),
  });

  it("takes seven of eight by Simpson's rule (619 m2) and the last gap as a trapezoid (162 m2)", () => {
    expect(sqM(area(working('simpson')))).toBeCloseTo(781, 6);
    expect(sqM(area(working('simpson', printed.slice(0, 7))))).toBeCloseTo(619, 6);
    const worked = workedArea(working('simpson'), 'metric');
    expect(worked.ok && worked.value.lines).toEqual([
      "Simpson's rule: interval / 3 × (first + last + 4 × second, fourth … + 2 × third, fifth …)",
      '30 / 3 × (0 + 5 + 4 × (2.65 + 3.75 + 3.6) + 2 × (3.8 + 4.65)) = 619 m²',
      'last gap as a trapezoid: 30 × (5 + 5.8) / 2 = 162 m²',
      'together 781 m²',
    ]);
  });

  it('by trapezoids is the interval times half the ends and all between', () => {
    // (0 + 5.8) / 2 + 2.65 + 3.8 + 3.75 + 4.65 + 3.6 + 5 = 26.35; times 30
    expect(sqM(area(working('trapezoid')))).toBeCloseTo(790.5, 6);
  });

  it("finds a half circle: Simpson's rule comes nearer than trapezoids", () => {
    const radius = 40;
    const half = Array.from({ length: 17 }, (_, index) =>
      Math.sqrt(Math.max(0, radius ** 2 - (index * 5 - radius) ** 2)),
    );
    const offsets = (rule: 'simpson' | 'trapezoid') => area({ kind: 'offsets', rule, intervalFt: 5, offsetsFt: half });
    const truth = (Math.PI * radius ** 2) / 2;
    const off = (found: number) => Math.abs(found - truth) / truth;
    expect(off(offsets('simpson'))).toBeLessThan(off(offsets('trapezoid')));
    expect(off(offsets('trapezoid'))).toBeLessThan(0.025);
  });

  it('of two is one trapezoid under either rule; one alone is refused', () => {
    expect(area({ kind: 'offsets', rule: 'simpson', intervalFt: 10, offsetsFt: [20, 30] })).toBe(250);
    expect(area({ kind: 'offsets', rule: 'trapezoid', intervalFt: 10, offsetsFt: [20, 30] })).toBe(250);
    expect(workedArea({ kind: 'offsets', rule: 'trapezoid', intervalFt: 10, offsetsFt: [20] }, 'us').ok).toBe(false);
  });
});

describe('mean radius', () => {
  /** How to Measure a Putting Green (abcdocz.com/doc/187946): 305.27 ft2 with 3.14 and the mean rounded to 9.86 ft. */
  const radiiFt = [7.1, 8.9, 9.7, 10.9, 12.4, 11.7, 11.8, 9.9, 6.8, 8.2, 9.7, 10.4, 12, 11.4, 8.9, 8];

  it('of sixteen radii gives the printed area of a green, but for the rounding of the source', () => {
    expect(3.14 * 9.86 ** 2).toBeCloseTo(305.27, 2);
    const found = area({ kind: 'mean-radius', radiiFt });
    expect(found).toBeCloseTo(Math.PI * (157.8 / 16) ** 2, 6);
    expect(Math.abs(found / 305.27 - 1)).toBeLessThan(0.0015);
  });

  it('shows its steps and needs three radii', () => {
    const worked = workedArea({ kind: 'mean-radius', radiiFt }, 'us');
    expect(worked.ok && worked.value.lines).toEqual([
      'mean radius: 157.8 / 16 = 9.86 ft',
      `π × (157.8 / 16)² = ${(Math.PI * (157.8 / 16) ** 2).toFixed(2)} ft²`,
    ]);
    expect(workedArea({ kind: 'mean-radius', radiiFt: [5, 5] }, 'us').ok).toBe(false);
  });
});

describe('workingWords', () => {
  it('names the way an area was found', () => {
    expect(workingWords({ kind: 'offsets', rule: 'simpson', intervalFt: 5, offsetsFt: [1, 2] })).toBe(
      "offsets, Simpson's rule",
    );
    expect(workingWords({ kind: 'offsets', rule: 'trapezoid', intervalFt: 5, offsetsFt: [1, 2] })).toBe(
      'offsets, trapezoid rule',
    );
    expect(workingWords({ kind: 'mean-radius', radiiFt: [1, 2, 3] })).toBe('mean of 3 radii');
    expect(workingWords({ kind: 'shapes', shapes: [{ ...add, kind: 'circle', diameterFt: 3 }] })).toBe(
      'plain shapes (1)',
    );
  });
});
