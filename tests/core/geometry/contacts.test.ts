import { describe, expect, it } from 'vitest';
import { findContacts } from '../../../core/geometry/contacts.ts';
import { sidesMeet } from '../../../core/geometry/segments.ts';
import { path, random } from './shapes.ts';

describe('findContacts', () => {
  it('finds nothing on plain rings', () => {
    const found = findContacts([path([0, 0], [10, 0], [10, 10], [0, 10])]);
    expect(found).toEqual({ crossings: [], crossingCount: 0, touch: null });
  });

  it('finds the crossing of a bow-tie at its place', () => {
    const found = findContacts([path([0, 0], [10, 10], [10, 0], [0, 10])]);
    expect(found.crossings).toEqual([{ x: 5, y: 5 }]);
  });

  it('finds all five crossings of a pentagram', () => {
    const corner = (turn: number): readonly [number, number] => [
      Math.round(1000 * Math.sin((2 * Math.PI * turn) / 5)),
      Math.round(1000 * Math.cos((2 * Math.PI * turn) / 5)),
    ];
    expect(findContacts([path(corner(0), corner(2), corner(4), corner(1), corner(3))]).crossingCount).toBe(5);
  });

  it('tells a touch from a crossing', () => {
    const found = findContacts([path([0, 0], [10, 0], [10, 10], [5, 0], [0, 10])]);
    expect(found.crossingCount).toBe(0);
    expect(found.touch).toEqual({ x: 5, y: 0 });
  });

  it('sees sides of two paths that run along each other', () => {
    const found = findContacts([path([0, 0], [10, 0], [10, 10]), path([2, 0], [8, 0], [5, -5])]);
    expect(found.crossingCount).toBe(0);
    expect(found.touch).not.toBeNull();
  });

  it('agrees with comparing every pair, on random tangles', () => {
    const { below } = random(5);
    for (let count = 0; count < 300; count += 1) {
      const ring = path(...Array.from({ length: 4 + below(8) }, () => [below(40), below(40)] as const));
      let meet = false;
      for (let left = 0; left < ring.length; left += 1) {
        for (let right = left + 2; right < ring.length; right += 1) {
          if (left === 0 && right === ring.length - 1) continue;
          const end = (index: number) => ring[(index + 1) % ring.length]!;
          meet ||= sidesMeet(ring[left]!, end(left), ring[right]!, end(right));
        }
      }
      const found = findContacts([ring]);
      expect(found.crossingCount > 0 || found.touch !== null, JSON.stringify(ring)).toBe(meet);
    }
  });

  it('handles 20,000 corners at once', () => {
    const count = 20_000;
    const ring = path(
      ...Array.from({ length: count }, (_, index) => {
        const angle = (2 * Math.PI * index) / count;
        return [Math.round(1e9 * Math.cos(angle)), Math.round(1e9 * Math.sin(angle))] as const;
      }),
    );
    expect(findContacts([ring])).toEqual({ crossings: [], crossingCount: 0, touch: null });
  });
});
