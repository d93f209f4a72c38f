import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { Region } from '../../../core/geometry/index.ts';
import { bestDirection, fixedDirection } from '../../../core/passes/angle.ts';
import { pivotOf, sidesOf } from '../../../core/passes/sides.ts';
import type { Strips } from '../../../core/passes/strips.ts';
import type { Gauge } from '../../../core/passes/types.ts';
import { type Corner, rectangle, starCorners } from '../geometry/shapes.ts';
import { groundOf, houseLawn, lShape, turned, unevenLawn } from './grounds.ts';

const gauge: Gauge = {
  swathM: 1.22,
  overlapM: 0.1,
  trimSwathM: 1.22,
  trimPasses: 0,
  sectionsM: null,
  shieldedSide: null,
  squareCorners: false,
  turnSec: 3,
  metresPerSec: 1.5,
  mark: null,
  transitMetresPerSec: 1.5,
};
const fieldOf = (ground: Region) => ({ rest: sidesOf(ground), bare: sidesOf(ground), ground: sidesOf(ground) });
/** Seconds for the swaths, the steps between lanes and the turns, and five times those of what the swath does not reach. */
const secondsOf = ({ lanes, lengthM, lostM, strips }: Strips) =>
  (lengthM + 5 * lostM + strips.length * lanes.stepM) / 1.5 + 3 * strips.length;

describe('the direction of the swaths', () => {
  const grounds: readonly (readonly [string, Region])[] = [
    ['a lawn round a house', houseLawn()],
    ['an L', lShape()],
    ['a slanted rectangle', groundOf(turned(rectangle(0, 0, 40, 13), 17.3))],
    ...[1, 2, 3, 4, 5, 6].map((seed) => [`uneven ground ${seed}`, unevenLawn(seed)] as const),
  ];

  it.each(grounds)('%s: within 2 %% of every one of 360 directions half a degree apart', (_, ground) => {
    const found = bestDirection(fieldOf(ground), pivotOf(ground), gauge);
    const scan = Array.from({ length: 360 }, (_each, step) =>
      secondsOf(fixedDirection(fieldOf(ground), pivotOf(ground), gauge, step / 2).strips),
    );
    expect(found.wasCutShort).toBe(false);
    expect(secondsOf(found.strips)).toBeLessThan(1.02 * Math.min(...scan));
    expect(Math.max(...scan)).toBeGreaterThan(1.05 * Math.min(...scan));
  });

  it.each([1, 2, 3, 4])(
    'over uneven ground %i of more than 200 lanes: within four thousandths of every one of 90 directions',
    (seed) => {
      const corners = starCorners(createRandom(seed), 14, 700).map(([x, y]): Corner => [x, 0.4 * y]);
      const ground = groundOf(corners);
      const found = bestDirection(fieldOf(ground), pivotOf(ground), gauge);
      const scan = Array.from({ length: 90 }, (_each, step) =>
        secondsOf(fixedDirection(fieldOf(ground), pivotOf(ground), gauge, 2 * step).strips),
      );
      expect(found.strips.lanes.count).toBeGreaterThan(200);
      expect(secondsOf(found.strips)).toBeLessThan(1.004 * Math.min(...scan));
      expect(Math.max(...scan)).toBeGreaterThan(1.012 * Math.min(...scan));
    },
  );

  it('is that of the long side of a rectangle, whatever the number of lanes', () => {
    for (const times of [1, 30]) {
      const ground = groundOf(turned(rectangle(0, 0, 40 * times, 13 * times), 17.3));
      expect((bestDirection(fieldOf(ground), pivotOf(ground), gauge).angle * 180) / Math.PI).toBeCloseTo(17.3, 3);
    }
  });

  it('that is given counts within half a turn', () => {
    const ground = lShape();
    const angles = [30, 210, -150].map((angle) => fixedDirection(fieldOf(ground), pivotOf(ground), gauge, angle).angle);
    for (const angle of angles) expect(angle).toBeCloseTo(Math.PI / 6, 9);
  });
});
