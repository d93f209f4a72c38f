import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import { type Projection, projectGeometry } from '../../../core/geometry/index.ts';

/** A made-up system: twice the degrees, nothing beyond 100. */
const doubled: Projection = {
  name: 'doubled',
  toDegrees: (x, y) => (Math.abs(x) > 100 || Math.abs(y) > 100 ? null : [x / 2, y / 2]),
  fromDegrees: ([longitude, latitude]) => [longitude * 2, latitude * 2],
};
const ring = [
  [0, 0],
  [4, 0],
  [4, 2],
  [0, 0],
];
const half = [
  [0, 0],
  [2, 0],
  [2, 1],
  [0, 0],
];

describe('projectGeometry', () => {
  it.each<[Geometry, Geometry]>([
    [
      { type: 'Point', coordinates: [4, 2, 99] },
      { type: 'Point', coordinates: [2, 1] },
    ],
    [
      { type: 'MultiPoint', coordinates: ring },
      { type: 'MultiPoint', coordinates: half },
    ],
    [
      { type: 'LineString', coordinates: ring },
      { type: 'LineString', coordinates: half },
    ],
    [
      { type: 'MultiLineString', coordinates: [ring, ring] },
      { type: 'MultiLineString', coordinates: [half, half] },
    ],
    [
      { type: 'Polygon', coordinates: [ring] },
      { type: 'Polygon', coordinates: [half] },
    ],
    [
      { type: 'MultiPolygon', coordinates: [[ring], [ring]] },
      { type: 'MultiPolygon', coordinates: [[half], [half]] },
    ],
    [
      { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: [4, 2] }] },
      { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: [2, 1] }] },
    ],
  ])('turns every corner of %j', (given, expected) => {
    expect(projectGeometry(given, doubled)).toEqual(expected);
  });

  it('gives nothing where one corner has no image, also deep inside a collection', () => {
    const lost: Geometry = { type: 'LineString', coordinates: [...ring, [101, 0]] };
    expect(projectGeometry(lost, doubled)).toBeNull();
    expect(projectGeometry({ type: 'GeometryCollection', geometries: [lost] }, doubled)).toBeNull();
    expect(projectGeometry({ type: 'Point', coordinates: [] }, { ...doubled, toDegrees: () => null })).toBeNull();
  });
});
