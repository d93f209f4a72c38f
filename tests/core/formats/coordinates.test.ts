import type { Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { eachPosition, turnFeatures } from '../../../core/formats/coordinates.ts';
import type { SourceFeature } from '../../../core/formats/index.ts';
import type { Projection } from '../../../core/geometry/index.ts';

const line: Position[] = [
  [1, 2],
  [3, 4],
];
const feature = (geometry: Geometry | null): SourceFeature => ({
  where: 'lots.zip, record 1',
  id: null,
  geometry,
  attributes: { name: 'Elm' },
  issues: [],
});
/** A made-up system that knows nothing east of 10. */
const tenths: Projection = {
  name: 'tenths',
  toDegrees: (x, y) => (x > 10 ? null : [x / 10, y / 10]),
  fromDegrees: ([longitude, latitude]) => [longitude * 10, latitude * 10],
};

describe('eachPosition', () => {
  it.each<[Geometry, number]>([
    [{ type: 'Point', coordinates: [1, 2] }, 1],
    [{ type: 'MultiPoint', coordinates: line }, 2],
    [{ type: 'LineString', coordinates: line }, 2],
    [{ type: 'MultiLineString', coordinates: [line, [], line] }, 4],
    [{ type: 'Polygon', coordinates: [] }, 0],
    [{ type: 'MultiPolygon', coordinates: [[line], [line, line]] }, 6],
    [{ type: 'GeometryCollection', geometries: [{ type: 'Polygon', coordinates: [line] }] }, 2],
  ])('sees every corner of %j', (geometry, count) => {
    const seen: Position[] = [];
    eachPosition(geometry, (position) => seen.push(position));
    expect(seen).toHaveLength(count);
    expect(seen.every(([x]) => x === 1 || x === 3)).toBe(true);
  });
});

describe('turnFeatures', () => {
  it('turns what it can; what it cannot keeps its attributes and says why', () => {
    const features = [
      feature({ type: 'LineString', coordinates: line }),
      feature(null),
      feature({ type: 'Point', coordinates: [11, 0] }),
    ];
    const [turned, empty, lost] = turnFeatures(features, tenths);
    expect(turned?.geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [0.1, 0.2],
        [0.3, 0.4],
      ],
    });
    expect(empty).toEqual(feature(null));
    expect(lost).toMatchObject({ geometry: null, attributes: { name: 'Elm' } });
    expect(lost?.issues).toMatchObject([
      { severity: 'error', code: 'coordinates-off-map', where: 'lots.zip, record 1' },
    ]);
  });
});
