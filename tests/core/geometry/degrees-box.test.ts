import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { boxCentre, degreesBox, joinBoxes, positionFault } from '../../../core/geometry/index.ts';

const polygon = (...ring: Position[]): AreaGeometry => ({ type: 'Polygon', coordinates: [ring] });
const codeOf = (geometry: AreaGeometry) => {
  const checked = degreesBox(geometry);
  return 'fault' in checked ? checked.fault.code : 'fine';
};

describe('degreesBox', () => {
  it('gives the bounds of all parts', () => {
    const checked = degreesBox({
      type: 'MultiPolygon',
      coordinates: [
        [
          [
            [-83, 40],
            [-83.001, 40.001],
          ],
        ],
        [[[-82.999, 39.999]]],
      ],
    });
    expect(checked).toEqual({ box: { west: -83.001, south: 39.999, east: -82.999, north: 40.001 } });
  });

  it('goes on across the 180th meridian', () => {
    const checked = degreesBox(polygon([179.999, 0], [-179.999, 0], [-179.999, 0.001]));
    if (!('box' in checked)) throw new Error('refused');
    expect(checked.box.east - checked.box.west).toBeCloseTo(0.002, 9);
    expect(Math.abs(boxCentre(checked.box)[0])).toBeCloseTo(180, 9);
  });

  it.each([
    ['State Plane feet', polygon([765_432, 2_956_000], [765_500, 2_956_000], [765_500, 2_956_100])],
    ['Web Mercator metres', polygon([-7_915_000, 5_214_000], [-7_914_900, 5_214_000], [-7_914_900, 5_214_100])],
    ['latitude first, west of 90 W', polygon([40, -122], [40, -122.001], [40.001, -122])],
    ['latitude first, east of 90 W', polygon([42, -71], [42, -71.001], [42.001, -71])],
    ['a longitude above 180', polygon([190, 40], [190.001, 40], [190, 40.001])],
  ])('refuses %s', (_, geometry) => expect(codeOf(geometry)).toBe('geometry-not-lonlat'));

  it('says what it takes the mistake for', () => {
    expect(positionFault([42, -71])?.message).toContain('swapped');
    expect(positionFault([40, -122])?.message).toContain('swapped');
    expect(positionFault([765_432, 2_956_000])?.message).toContain('map grid');
    expect(positionFault([-71, 42])).toBeNull();
  });

  it.each([
    [polygon([Number.NaN, 40], [-83, 40], [-83, 41]), 'geometry-invalid'],
    [polygon([-83, Number.POSITIVE_INFINITY]), 'geometry-invalid'],
    [polygon(), 'geometry-invalid'],
    [polygon([-83, 40], [-82, 40], [-82, 41]), 'geometry-too-large'],
    [polygon([-83, 40], [-82.88, 40], [-82.88, 40.001]), 'geometry-too-large'],
    [polygon([-83, 40], [-82.89, 40], [-82.89, 40.001]), 'fine'],
    [polygon([-83, 40], [-83, 40.0905], [-82.99, 40]), 'geometry-too-large'],
    [polygon([-83, 40], [-83, 40.0895], [-82.99, 40]), 'fine'],
    [polygon([-83, 40], [97, 40], [97, 40.001]), 'geometry-too-large'],
  ])('gives %o as %s', (geometry, code) => expect(codeOf(geometry)).toBe(code));

  it('joins boxes on both sides of the 180th meridian', () => {
    const west = { west: 179.99, south: 0, east: 179.999, north: 1 };
    const east = { west: -179.999, south: 0, east: -179.99, north: 2 };
    const joined = joinBoxes(west, east);
    expect(joined.east - joined.west).toBeCloseTo(0.02, 9);
    expect(joined.north).toBe(2);
  });
});
