import { describe, expect, it } from 'vitest';
import { type EdgeKind, edgeLengths, edgeWords } from '../../../core/measure/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

const lawn = property(
  [
    zone('lawn', polygonFt(rectangle(0, 0, 200, 100))),
    zone('next', polygonFt(rectangle(200, 0, 260, 60))),
    stated('card', 900),
  ],
  [
    exclusion('house', polygonFt(rectangle(20, 20, 60, 50)), { what: 'building' }),
    exclusion('rose bed', polygonFt(rectangle(-8, 0, -0.5, 100)), { what: 'bed' }),
    exclusion('drive', polygonFt(rectangle(100, -10, 110, 110)), { what: 'paving', keepAwayFt: 1 }),
  ],
);

function lengths(zoneId: string): Readonly<Partial<Record<EdgeKind, number>>> {
  return Object.fromEntries(edgeLengths(lawn, zoneId).map(({ kind, lengthFt }) => [kind, lengthFt]));
}

describe('edgeLengths', () => {
  it('tells what lies beyond each side: in holes, across cuts, along a line drawn twice, and nothing', () => {
    const found = lengths('lawn');
    expect(found.building).toBeCloseTo(2 * (40 + 30), -0.5);
    // Both sides of the drive and of what is kept away from it.
    expect(Math.abs((found.paving ?? 0) - 200)).toBeLessThan(8);
    expect(Math.abs((found.bed ?? 0) - 100)).toBeLessThan(4);
    expect(Math.abs((found.zone ?? 0) - 60)).toBeLessThan(4);
    // Seven ends of such sides, at each of which about a foot of the open side beside it counts with them.
    expect(Math.abs((found.open ?? 0) - (2 * (200 - 12) + 40))).toBeLessThan(10);
  });

  it('adds up to the edge, longest first', () => {
    const found = edgeLengths(lawn, 'lawn');
    expect(found.reduce((sum, each) => sum + each.lengthFt, 0)).toBeCloseTo(140 + 200 + 200 + 2 * 188, -0.5);
    expect(found.map((each) => each.lengthFt)).toEqual(
      found.map((each) => each.lengthFt).toSorted((left, right) => right - left),
    );
  });

  it('says it in words, what is not drawn last', () => {
    const edges = [
      { kind: 'open', lengthFt: 300 },
      { kind: 'bed', lengthFt: 40 },
    ] as const;
    expect(edgeWords(edges, (feet) => `${feet} ft`)).toBe('next to beds 40 ft, nothing drawn 300 ft');
  });

  it('has nothing to say of zones without an outline', () => {
    expect(edgeLengths(lawn, 'card')).toEqual([]);
    expect(edgeLengths(lawn, 'none')).toEqual([]);
  });
});
