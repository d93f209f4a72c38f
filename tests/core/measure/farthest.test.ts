import { describe, expect, it } from 'vitest';
import { farthestFt } from '../../../core/measure/index.ts';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { placeAt, rectangle } from '../geometry/shapes.ts';
import { exclusion, HOME, polygonFt, property, stated, zone } from './lawns.ts';

const at = (east: number, north: number) => placeAt(HOME, [east * METRES_PER_FOOT, north * METRES_PER_FOOT]);

describe('farthestFt', () => {
  const back = zone('back', polygonFt(rectangle(0, 0, 60, 80)));

  it('is the straight line from the parking point to the farthest corner', () => {
    expect(farthestFt(property([back]), back)).toBeCloseTo(100, 2);
  });

  it('starts at the stand where there is one', () => {
    const stand = { ...back, hoseStand: at(60, 0) };
    expect(farthestFt(property([stand]), stand)).toBeCloseTo(100, 2);
    const middle = { ...back, hoseStand: at(30, 40) };
    expect(farthestFt(property([middle]), middle)).toBeCloseTo(50, 2);
  });

  it('ends at the farthest corner of what is treated', () => {
    const pond = exclusion('pond', polygonFt(rectangle(0, 40, 60, 80)), { what: 'water' });
    expect(farthestFt(property([back], [pond]), back)).toBeCloseTo(Math.hypot(60, 40), 2);
  });

  it('goes round a house, by the shorter of both sides', () => {
    const house = exclusion('house', polygonFt(rectangle(10, 20, 70, 40)), { what: 'building', keepAwayFt: 0 });
    const behind = zone('behind', polygonFt(rectangle(10, 40, 70, 60)));
    const lawn = property([behind], [house]);
    // From (0, 0) past the corner (10, 40) to (70, 60), and not past (70, 20) and (70, 40).
    const left = Math.hypot(10, 40) + Math.hypot(60, 20);
    const right = Math.hypot(70, 20) + 20;
    // Farthest is where both ways are as long: it lies on the side that is 20 ft farther on, and past the right corner.
    const found = farthestFt(lawn, behind);
    expect(found).toBeGreaterThan(Math.hypot(70, 60));
    expect(found).toBeLessThan(Math.min(left, right + 20) + 0.5);
    const bed = { ...house, what: 'bed' } as const;
    expect(farthestFt(property([behind], [bed]), behind)).toBeCloseTo(Math.hypot(70, 60), 2);
  });

  it('is straight where a house stands on the parking point', () => {
    const house = exclusion('house', polygonFt(rectangle(-10, -10, 10, 10)), { what: 'building', keepAwayFt: 0 });
    const beside = zone('beside', polygonFt(rectangle(10, 0, 60, 80)));
    expect(farthestFt(property([beside], [house]), beside)).toBeCloseTo(100, 2);
  });

  it('is what was paced on site where that is written down', () => {
    const paced = { ...back, hosePathFt: 140 };
    expect(farthestFt(property([paced]), paced)).toBe(140);
  });

  it('takes a stated area for a square at the stand, and knows nothing of a zone without area', () => {
    const card = stated('card', 5000);
    expect(farthestFt(property([card]), card)).toBeCloseTo(100, 9);
    const bad = zone(
      'bad',
      polygonFt([
        [0, 0],
        [10, 0],
        [5, 0],
      ]),
    );
    expect(farthestFt(property([bad]), bad)).toBe(Number.POSITIVE_INFINITY);
  });
});
