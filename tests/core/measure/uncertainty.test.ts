import { describe, expect, it } from 'vitest';
import { cornerNoiseArea, measureProperty, outlineErrorArea, twoPointScaleShare } from '../../../core/measure/index.ts';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

/** Corners of a rectangle twice as long as wide, with a corner at every eighth of its length and fourth of its width. */
function sixteenCorners(areaSqM: number): readonly { readonly x: number; readonly y: number }[] {
  const wide = Math.sqrt(areaSqM / 2) / METRES_PER_FOOT;
  const along = (count: number, at: (share: number) => readonly [number, number]) =>
    Array.from({ length: count }, (_, index) => at(index / count)).map(([x, y]) => ({ x: x * wide, y: y * wide }));
  return [
    ...along(5, (share) => [2 * share, 0]),
    ...along(3, (share) => [2, share]),
    ...along(5, (share) => [2 - 2 * share, 1]),
    ...along(3, (share) => [0, 1 - share]),
  ];
}

describe('outlineErrorArea', () => {
  /**
   * An outline drawn 0.3 m too far out all round: 9 % at 200 m2, 4 % at 1,000 and 1.8 % at 5,000. Worked out here for a
   * rectangle twice as long as wide: edge 6 w, area 2 w2, so the share is 0.3 x 6 / (2 w).
   */
  it.each([
    [200, 0.09],
    [1000, 0.04],
    [5000, 0.018],
  ])('at %d m2 is %f of the area', (areaSqM, share) => {
    const wideM = Math.sqrt(areaSqM / 2);
    const byHand = (0.3 * 6) / (2 * wideM);
    const error = outlineErrorArea(0.3 / METRES_PER_FOOT, (6 * wideM) / METRES_PER_FOOT);
    expect(error / (areaSqM / METRES_PER_FOOT ** 2)).toBeCloseTo(byHand, 12);
    expect(byHand).toBeCloseTo(share, 3);
  });
});

describe('cornerNoiseArea', () => {
  /** Corners off by 0.3 m each on its own, 16 corners: about 2 % at 200 m2, 1 % at 1,000, 0.4 % at 5,000 (lawns of any shape). */
  it.each([
    [200, 0.02],
    [1000, 0.01],
    [5000, 0.004],
  ])('at %d m2 is about %f of the area', (areaSqM, share) => {
    const error = cornerNoiseArea(0.3 / METRES_PER_FOOT, sixteenCorners(areaSqM));
    const got = error / (areaSqM / METRES_PER_FOOT ** 2);
    expect(Math.abs(got - share)).toBeLessThan(0.0015);
  });

  /** A square of side s: each corner's neighbours lie root 2 s apart, so the error is e/2 x root(4 x 2 s2) = root 2 e s. */
  it('of a square is root 2 times error times side', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 50, y: 50 },
      { x: 0, y: 50 },
    ];
    expect(cornerNoiseArea(1, corners)).toBeCloseTo(Math.SQRT2 * 50, 9);
    expect(cornerNoiseArea(1, [])).toBe(0);
  });
});

describe('twoPointScaleShare', () => {
  it('is 2.8 % for clicks off by 0.3 m on a base of 30 m', () => {
    expect(twoPointScaleShare(0.3, 30)).toBeCloseTo(0.028, 3);
  });
});

const lawn = polygonFt([
  [0, 0],
  [100, 0],
  [100, 50],
  [0, 50],
]);
const bed = polygonFt([
  [20, 20],
  [30, 20],
  [30, 30],
  [20, 30],
]);
const drawn = (id: string, geometry = lawn, slopeDeg = 0) =>
  zone(id, geometry, { shape: { kind: 'drawn', geometry, outlineErrorFt: 1 }, slopeDeg });

describe('likely error of a measured property', () => {
  it('is the outline error times every edge of what is treated', () => {
    const measure = measureProperty(property([drawn('lawn')], [exclusion('bed', bed)]));
    // 300 ft round the lawn and 40 ft round the bed, 1 ft each
    expect(measure.zones[0]?.errorSqFt).toBeCloseTo(340, 1);
    expect(measure.errorSqFt).toBeCloseTo(340, 1);
  });

  it('grows with the slope as the area does', () => {
    expect(measureProperty(property([drawn('lawn', lawn, 60)])).errorSqFt).toBeCloseTo(600, 1);
  });

  it('adds up over the zones', () => {
    const far = polygonFt([
      [200, 0],
      [210, 0],
      [210, 10],
      [200, 10],
    ]);
    expect(measureProperty(property([drawn('lawn'), drawn('patch', far)])).errorSqFt).toBeCloseTo(340, 1);
  });

  it('is not known for stated areas, for outlines without a word, and for a total that holds one of these', () => {
    const measure = measureProperty(property([drawn('lawn'), stated('card', 800)]));
    expect(measure.zones.map((each) => each.errorSqFt === null)).toEqual([false, true]);
    expect(measure.errorSqFt).toBeNull();
    expect(measureProperty(property([zone('silent', lawn)])).errorSqFt).toBeNull();
    expect(measureProperty(property([])).errorSqFt).toBeNull();
  });

  it('does not count a shared side twice as an edge of slivers', () => {
    const left = polygonFt([
      [0, 0],
      [50, 0],
      [50, 50],
      [0, 50],
    ]);
    const right = polygonFt([
      [50, 0],
      [100, 0],
      [100, 50],
      [50, 50],
    ]);
    // Each half has 200 ft of edge. Cutting the first from the second leaves hairs along the shared side at most.
    const measure = measureProperty(property([drawn('left', left), drawn('right', right)]));
    expect(measure.errorSqFt).toBeCloseTo(400, 0);
  });
});
