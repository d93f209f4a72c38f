import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { groundOf, likeness } from '../../../core/intake/likeness.ts';
import { sameOutline } from '../../../core/intake/same-outline.ts';
import { rectangle, ringAt, starCorners } from '../geometry/shapes.ts';
import { HOME } from '../measure/lawns.ts';

const polygon = (...rings: readonly (readonly Position[])[]): AreaGeometry => ({ type: 'Polygon', coordinates: rings });
const star = (seed: number, corners: number) => ringAt(HOME, starCorners(createRandom(seed), corners, 40)).slice(0, -1);
const closed = (ring: readonly Position[]): readonly Position[] => [...ring, ring[0]!];

describe('sameOutline', () => {
  it('is true wherever the ring starts and whichever way it runs, open or closed, rounded to 9 decimals', () => {
    fc.assert(
      fc.property(fc.nat(999), fc.integer({ min: 3, max: 30 }), fc.nat(29), fc.boolean(), (seed, count, turn, back) => {
        const ring = star(seed, count);
        const turned = [...ring.slice(turn % count), ...ring.slice(0, turn % count)];
        const other = (back ? turned.toReversed() : turned).map(
          ([longitude, latitude]): Position => [Number(longitude.toFixed(9)), Number(latitude.toFixed(9))],
        );
        expect(sameOutline(polygon(closed(ring)), polygon(closed(other)))).toBe(true);
        expect(sameOutline(polygon(ring), polygon(closed(other)))).toBe(true);
      }),
    );
  });

  it('is false where one corner lies a centimetre off, a corner is missing, or a hole is', () => {
    const ring = star(5, 12);
    const [first, ...rest] = ring;
    const moved: Position = [first![0] + 1.2e-7, first![1]];
    expect(sameOutline(polygon(closed(ring)), polygon(closed([moved, ...rest])))).toBe(false);
    expect(sameOutline(polygon(closed(ring)), polygon(closed(rest)))).toBe(false);
    expect(sameOutline(polygon(closed(ring)), polygon(closed(ring), closed(star(6, 4))))).toBe(false);
  });
});

describe('likeness', () => {
  const box = (west: number, south: number, east: number, north: number) =>
    groundOf(polygon(ringAt(HOME, rectangle(west, south, east, north))))!;

  it('is common ground as a share of both together', () => {
    // 40 by 40 m, moved by 10 m: 30 * 40 common of 50 * 40.
    expect(likeness(box(0, 0, 40, 40), box(10, 0, 50, 40))).toBeCloseTo(0.6, 3);
    expect(likeness(box(0, 0, 40, 40), box(0, 0, 40, 40))).toBe(1);
  });

  it('is nothing for half of the smaller one or less, and for neighbours', () => {
    expect(likeness(box(0, 0, 40, 40), box(21, 0, 61, 40))).toBeNull();
    expect(likeness(box(0, 0, 40, 40), box(40, 0, 80, 40))).toBeNull();
    // Boxes meet over more than half of the smaller one, the ground in them does not.
    const corner = groundOf(
      polygon(
        ringAt(HOME, [
          [0, 0],
          [40, 40],
          [0, 40],
        ]),
      ),
    )!;
    const other = groundOf(
      polygon(
        ringAt(HOME, [
          [1, 0],
          [40, 0],
          [40, 39],
        ]),
      ),
    )!;
    expect(likeness(corner, other)).toBeNull();
  });

  it('finds a small outline within a large one', () => {
    expect(likeness(box(0, 0, 40, 40), box(10, 10, 20, 20))).toBeCloseTo(100 / 1600, 4);
  });
});
