import { describe, expect, it } from 'vitest';
import { filledArea } from '../../../core/geometry/filled-area.ts';
import { doubleArea } from '../../../core/geometry/region.ts';
import { path, random, rectangle, starCorners } from './shapes.ts';

const nonzero = (subject: number) => subject !== 0;
const positive = (subject: number) => subject > 0;
const difference = (subject: number, clip: number) => subject !== 0 && clip === 0;

describe('filledArea', () => {
  const square = path(...rectangle(0, 0, 10, 10));

  it('knows plain shapes, either way round', () => {
    expect(filledArea([square], [], nonzero)).toBe(100);
    expect(filledArea([square.toReversed()], [], nonzero)).toBe(100);
    expect(filledArea([path([0, 0], [10, 0], [0, 5])], [], nonzero)).toBeCloseTo(25, 9);
    expect(filledArea([], [], nonzero)).toBe(0);
  });

  it('counts by winding: anticlockwise is positive', () => {
    expect(filledArea([square], [], positive)).toBe(100);
    expect(filledArea([square.toReversed()], [], positive)).toBe(0);
    const tie = path([0, 0], [10, 10], [10, 0], [0, 10]);
    expect(filledArea([tie], [], nonzero)).toBeCloseTo(50, 9);
    expect(filledArea([tie], [], positive)).toBeCloseTo(25, 9);
    const hole = path(...rectangle(2, 2, 5, 5)).toReversed();
    expect(filledArea([square, hole], [], nonzero)).toBe(91);
  });

  it('takes one set of paths from another', () => {
    expect(filledArea([square], [path(...rectangle(5, 5, 15, 15))], difference)).toBe(75);
    expect(filledArea([square], [square], difference)).toBe(0);
    const both = (subject: number, clip: number) => subject !== 0 && clip !== 0;
    expect(filledArea([square], [path(...rectangle(5, 5, 15, 15))], both)).toBe(25);
  });

  it('is the shoelace area on uneven outlines', () => {
    for (let seed = 1; seed <= 50; seed += 1) {
      const star = path(
        ...starCorners(random(seed), 3 + (seed % 40), 1e6).map(([x, y]) => [Math.round(x), Math.round(y)] as const),
      );
      expect((2 * filledArea([star], [], nonzero)) / Math.abs(doubleArea(star))).toBeCloseTo(1, 9);
    }
  });

  it('is what dots thrown at random say, on tangles', () => {
    const { below, unit } = random(4);
    for (let round = 0; round < 10; round += 1) {
      const tangle = path(...Array.from({ length: 5 + below(6) }, () => [below(1000), below(1000)] as const));
      let hits = 0;
      const dots = 20_000;
      for (let dot = 0; dot < dots; dot += 1) if (winding(tangle, 1000 * unit(), 1000 * unit()) !== 0) hits += 1;
      // Four standard deviations of the share of hits.
      expect(Math.abs(filledArea([tangle], [], nonzero) / 1e6 - hits / dots)).toBeLessThan(4 * Math.sqrt(0.25 / dots));
    }
  });
});

function winding(ring: readonly { readonly x: number; readonly y: number }[], x: number, y: number): number {
  let count = 0;
  for (const [index, from] of ring.entries()) {
    const to = ring[(index + 1) % ring.length]!;
    const side = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
    if (from.y <= y && to.y > y && side > 0) count += 1;
    if (from.y > y && to.y <= y && side < 0) count -= 1;
  }
  return count;
}
