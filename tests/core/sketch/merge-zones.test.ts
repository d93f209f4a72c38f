import { describe, expect, it } from 'vitest';
import type { Zone } from '../../../core/book/index.ts';
import { mergeZones } from '../../../core/sketch/index.ts';
import { property, stated, zone } from '../measure/lawns.ts';
import { areaSqFt, blockOutline, feetAt, good, refusalOf } from './feet.ts';

const drawn = (id: string, west: number, east: number, more: Partial<Zone> = {}, outlineErrorFt?: number): Zone => ({
  ...zone(id, blockOutline(west, 0, east, 100), more),
  shape: {
    kind: 'drawn',
    geometry: blockOutline(west, 0, east, 100),
    ...(outlineErrorFt === undefined ? {} : { outlineErrorFt }),
  },
});

describe('merging zones', () => {
  it('makes one of neighbours: 4,000 and 6,000 ft2 are 10,000', () => {
    const left = drawn('left', 0, 40, { hoseStand: feetAt(0, 0), hosePathFt: 90, gateIds: ['a', 'b'] });
    const right = drawn('right', 40, 100, { gateIds: ['b', 'c'] });
    const lawn = property([left, stated('card', 500), right]);
    const { zones } = good(mergeZones(lawn, ['left', 'right']));
    expect(zones.map((each) => each.id)).toEqual(['left', 'card']);
    const [merged] = zones;
    expect(merged!.shape.kind === 'drawn' && areaSqFt(merged!.shape.geometry)).toBeCloseTo(10_000, 0);
    expect(merged).toMatchObject({ name: 'left', gateIds: ['a', 'b', 'c'], hoseStand: feetAt(0, 0) });
    expect(merged).not.toHaveProperty('hosePathFt');
    expect(good(mergeZones(lawn, ['right', 'left'])).zones.map((each) => each.id)).toEqual(['card', 'right']);
  });

  it('takes the worse of two figures, and adds up the cards', () => {
    const left = drawn('left', 0, 40, { statedAreaSqFt: 4100, wetLimitLb: 900 }, 1);
    const right = drawn('right', 40, 100, { statedAreaSqFt: 5900, wetLimitLb: 700 }, 3);
    expect(good(mergeZones(property([left, right]), ['left', 'right'])).zones).toMatchObject([
      { statedAreaSqFt: 10_000, wetLimitLb: 700, shape: { outlineErrorFt: 3 } },
    ]);
  });

  it('leaves out what only one of them has, where it is not true of both', () => {
    const left = drawn('left', 0, 40, { statedAreaSqFt: 4100 }, 1);
    const right = drawn('right', 40, 100, { wetLimitLb: 700 });
    const [merged] = good(mergeZones(property([left, right]), ['left', 'right'])).zones;
    expect(merged).not.toHaveProperty('statedAreaSqFt');
    expect(merged!.shape).not.toHaveProperty('outlineErrorFt');
    expect(merged!.wetLimitLb).toBe(700);
  });

  it('is refused for different slopes and for fewer than two outlines', () => {
    const lawn = property([drawn('left', 0, 40, { slopeDeg: 4 }), drawn('right', 40, 100), stated('card', 500)]);
    expect(refusalOf(mergeZones(lawn, ['left', 'right']))).toEqual({
      code: 'geometry-invalid',
      detail: 'Zone left slopes by 4 degrees, zone right by 0.',
    });
    expect(refusalOf(mergeZones(lawn, ['left', 'card'])).code).toBe('nothing-to-do');
    expect(refusalOf(mergeZones(lawn, [])).code).toBe('nothing-to-do');
  });
});
