import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { areaGeometrySchema, positionSchema } from '../../../core/book/index.ts';
import { ringSchema } from '../../../core/book/schema-parts.ts';

/** Ring by ring as the pieces say, without the quick look. */
const slowly = v.array(positionSchema);
const outcome = (schema: typeof slowly, value: unknown) => {
  const { success, output, issues } = v.safeParse(schema, value);
  return { success, output, issues: issues?.map((each) => [v.getDotPath(each), each.message]) };
};

const figure = fc.oneof(
  fc.double({ min: -200, max: 200 }),
  fc.constantFrom<unknown>(180, -180, 90, -90, 180.0000001, Number.NaN, Number.POSITIVE_INFINITY, null, '1', undefined),
);
const position = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.tuple(fc.double({ min: -180, max: 180, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true })),
  },
  { weight: 1, arbitrary: fc.array(figure, { maxLength: 4 }) },
  { weight: 1, arbitrary: fc.anything() },
);

describe('a ring of corners', () => {
  it('is read alike with the quick look and without it: what passes, what comes of it, and the words of every fault', () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.oneof({ weight: 9, arbitrary: fc.array(position, { maxLength: 6 }) }, fc.anything()), (ring) => {
        const slow = outcome(slowly, ring);
        expect(outcome(ringSchema, ring)).toEqual(slow);
        if (!slow.success) refused += 1;
      }),
      { numRuns: 400 },
    );
    expect(refused).toBeGreaterThan(50);
    expect(refused).toBeLessThan(350);
  });

  it('is refused with the place of the corner that is off the globe', () => {
    const coordinates = [
      [
        [0, 0],
        [1, 91],
        [1, 1],
        [0, 0],
      ],
    ];
    const { issues } = v.safeParse(areaGeometrySchema, { type: 'Polygon', coordinates });
    expect(issues?.map((each) => v.getDotPath(each))).toEqual(['coordinates.0.1.1']);
  });
});
