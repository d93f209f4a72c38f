import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DegreesBox, placeIndex } from '../../../core/geometry/index.ts';

const box = fc
  .tuple(
    fc.double({ min: -180, max: 180, noNaN: true }),
    fc.double({ min: -80, max: 80, noNaN: true }),
    fc.constantFrom(0, 1e-6, 0.001, 0.02, 3),
    fc.constantFrom(0, 1e-5, 0.001, 0.4),
  )
  .map(([west, south, width, height]): DegreesBox => ({ west, south, east: west + width, north: south + height }));

const near = fc
  .tuple(box, fc.double({ min: -0.002, max: 0.002, noNaN: true }), fc.double({ min: -0.002, max: 0.002, noNaN: true }))
  .map(([at, east, north]) => ({
    west: at.west + east,
    east: at.east + east,
    south: at.south + north,
    north: at.north + north,
  }));

/** Looks at every box, at the same place and one turn of the globe to each side. */
function allMeeting(boxes: readonly (DegreesBox | null)[], sought: DegreesBox, margin: number): readonly number[] {
  return boxes.flatMap((each, index) => {
    if (each === null) return [];
    const meets = [0, -360, 360].some(
      (turn) =>
        sought.west - margin + turn <= each.east &&
        each.west <= sought.east + margin + turn &&
        sought.south - margin <= each.north &&
        each.south <= sought.north + margin,
    );
    return meets ? [index] : [];
  });
}

describe('placeIndex', () => {
  it('finds exactly the boxes that looking at all of them finds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(box, near, fc.constant(null)), { maxLength: 40 }),
        fc.oneof(box, near),
        fc.constantFrom(0, 0.0005, 2),
        (boxes, sought, margin) => {
          expect(placeIndex(boxes).meeting(sought, margin)).toEqual(allMeeting(boxes, sought, margin));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('finds a box across the 180th meridian', () => {
    const index = placeIndex([{ west: 179.999, east: 180.001, south: 0, north: 1 }]);
    expect(index.meeting({ west: -179.9995, east: -179.9994, south: 0.5, north: 0.6 })).toEqual([0]);
  });

  it('finds nothing among none', () => {
    expect(placeIndex([]).meeting({ west: 0, east: 1, south: 0, north: 1 })).toEqual([]);
  });
});
