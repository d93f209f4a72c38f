import { describe, expect, it } from 'vitest';
import { filledArea } from '../../../core/geometry/filled-area.ts';
import { regionArea } from '../../../core/geometry/index.ts';
import { STEPS_PER_METRE } from '../../../core/geometry/region.ts';
import { sweep } from '../../../core/geometry/sweep.ts';
import { path, random } from './shapes.ts';

const SQ_M = STEPS_PER_METRE ** 2;

describe('sweep', () => {
  it('ends on an east-west run that turns back on itself', () => {
    // The clipper alone fills the memory here.
    const ring = path(
      [5123628, 0],
      [4269690, 0],
      [5123628, 0],
      [5123628, 3331038],
      [0, 2220692],
      [0, 1110346],
      [2561814, 0],
      [1707876, 0],
      [853938, 0],
    );
    const wanted = filledArea([ring], [], (subject) => subject !== 0) / SQ_M;
    expect(regionArea(sweep('union', [ring]))).toBeCloseTo(wanted, 2);
    expect(sweep('union', [path([0, 0], [50, 0], [20, 0], [90, 0])]).paths).toEqual([]);
  });

  it.each([
    [
      'corners in nearly one place',
      [
        path(
          [-2561813, -3331036],
          [-2561811, 1110350],
          [-2561810, 1110348],
          [-853938, 3],
          [2561815, -2220689],
          [-2561810, 1110347],
          [853941, 1110347],
          [853940, 1110347],
          [-2561811, -2220689],
        ),
      ],
      [],
    ],
    [
      'a crack that rounding closes',
      [path([1291610, 3998806], [-2786045, 183604], [3159654, -1229207])],
      [
        path([2786045, -183604], [2412436, 861998], [1551363, -1803872]),
        path(
          [-1551363, 1803872],
          [-1234682, -1620268],
          [1551363, -1803872],
          [3533263, -2274809],
          [2412436, 861998],
          [1665219, 2953203],
          [-747218, 2091205],
          [1177754, -758270],
        ),
      ],
    ],
  ])('is right where the clipper alone loses pieces: %s', (_, subject, clip) => {
    const operation = clip.length === 0 ? 'union' : 'difference';
    const wanted = filledArea(subject, clip, (count, cut) => count !== 0 && cut === 0) / SQ_M;
    expect(regionArea(sweep(operation, subject, clip))).toBeCloseTo(wanted, 1);
  });

  it('is right on 3,000 tangles with corners on a coarse grid', () => {
    const { below } = random(2);
    for (let count = 0; count < 3000; count += 1) {
      const tangle = path(
        ...Array.from(
          { length: 4 + below(10) },
          () => [(below(7) - 3) * 853938 + below(5), (below(7) - 3) * 1110346 + below(5)] as const,
        ),
      );
      const wanted = filledArea([tangle], [], (subject) => subject !== 0) / SQ_M;
      expect(Math.abs(regionArea(sweep('union', [tangle])) - wanted), JSON.stringify(tangle)).toBeLessThan(0.05);
    }
  });
});
