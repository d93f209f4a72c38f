import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { workedArea } from '../../../core/field-work/index.ts';

const length = fc.double({ min: 0.5, max: 500, noNaN: true });
const base = { take: fc.constant('add' as const), note: fc.constant('') };
const anyShape: fc.Arbitrary<PlainShape> = fc.oneof(
  fc.record({ ...base, kind: fc.constant('rectangle' as const), lengthFt: length, widthFt: length }),
  fc.record({ ...base, kind: fc.constant('triangle' as const), baseFt: length, heightFt: length }),
  fc.record({ ...base, kind: fc.constant('circle' as const), diameterFt: length }),
  fc.record({ ...base, kind: fc.constant('trapezoid' as const), sideFt: length, otherSideFt: length, apartFt: length }),
  fc.record({ ...base, kind: fc.constant('ellipse' as const), lengthFt: length, widthFt: length }),
);
const lengths = (least: number) => fc.array(length, { minLength: least, maxLength: 20 });
const anyWorking: fc.Arbitrary<AreaWorking> = fc.oneof(
  fc.record({ kind: fc.constant('shapes' as const), shapes: fc.array(anyShape, { minLength: 1, maxLength: 6 }) }),
  fc.record({
    kind: fc.constant('offsets' as const),
    rule: fc.constantFrom('trapezoid' as const, 'simpson' as const),
    intervalFt: length,
    offsetsFt: lengths(2),
  }),
  fc.record({ kind: fc.constant('mean-radius' as const), radiiFt: lengths(3) }),
);

function area(working: AreaWorking): number {
  const worked = workedArea(working, 'us');
  if (!worked.ok) throw new Error(worked.error.detail);
  return worked.value.areaSqFt;
}

/** Every length of the field work k times as long. */
function stretched(working: AreaWorking, factor: number): AreaWorking {
  const text = JSON.stringify(working, (_, value) => (typeof value === 'number' ? value * factor : value));
  return JSON.parse(text) as AreaWorking;
}

const offsets = (rule: 'trapezoid' | 'simpson', widths: readonly number[]): AreaWorking => ({
  kind: 'offsets',
  rule,
  intervalFt: 10,
  offsetsFt: widths,
});

describe('areas from field work', () => {
  it('are positive, with lines of text, and grow with the square of the lengths', () => {
    fc.assert(
      fc.property(anyWorking, fc.double({ min: 0.1, max: 20, noNaN: true }), (working, factor) => {
        const found = area(working);
        expect(found).toBeGreaterThan(0);
        expect(area(stretched(working, factor)) / (found * factor * factor)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('of shapes taken off are those shapes less', () => {
    fc.assert(
      fc.property(anyShape, anyShape, (large, small) => {
        const both = area({ kind: 'shapes', shapes: [large, small] });
        const less = workedArea({ kind: 'shapes', shapes: [large, { ...small, take: 'subtract' }] }, 'us');
        const alone = area({ kind: 'shapes', shapes: [large] });
        if (less.ok) expect((less.value.areaSqFt + both) / 2).toBeCloseTo(alone, 6);
        else expect(both - alone).toBeGreaterThanOrEqual(alone - 1e-6);
      }),
    );
  });

  it("by Simpson's rule are exact for edges that are parabolas, by trapezoids for straight ones", () => {
    fc.assert(
      fc.property(length, length, fc.integer({ min: 1, max: 8 }), (a, b, pairs) => {
        const count = 2 * pairs;
        const end = 10 * count;
        const line = Array.from({ length: count + 1 }, (_, at) => a + (b * at) / count);
        expect(area(offsets('trapezoid', line))).toBeCloseTo(end * (a + b / 2), 4);
        const curve = Array.from({ length: count + 1 }, (_, at) => a + b * (at / count) ** 2);
        // The integral of a + b (x / L)2 over L is L (a + b / 3).
        expect(area(offsets('simpson', curve))).toBeCloseTo(end * (a + b / 3), 4);
      }),
    );
  });

  it('do not depend on the end from which the offsets were measured, where their number is odd', () => {
    fc.assert(
      fc.property(lengths(3), fc.constantFrom('trapezoid' as const, 'simpson' as const), (widths, rule) => {
        const odd = widths.length % 2 === 1 ? widths : widths.slice(1);
        expect(area(offsets(rule, odd.toReversed()))).toBeCloseTo(area(offsets(rule, odd)), 6);
      }),
    );
  });
});
