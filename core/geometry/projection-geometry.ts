import type { Geometry, Position } from 'geojson';
import type { Projection } from './projection-maker.ts';

/**
 * A geometry in map coordinates turned into degrees (WGS84); null where any of its corners cannot be shown in degrees. Heights
 * are left out. Sides stay straight between the same corners.
 */
export function projectGeometry(geometry: Geometry, { toDegrees }: Projection): Geometry | null {
  let isLost = false;
  const turned = turnGeometry(geometry, ([x = Number.NaN, y = Number.NaN]) => {
    const position = toDegrees(x, y);
    if (position !== null) return [...position];
    isLost = true;
    return [0, 0];
  });
  return isLost ? null : turned;
}

function turnGeometry(geometry: Geometry, turn: (position: Position) => Position): Geometry {
  const line = (positions: readonly Position[]): Position[] => positions.map(turn);
  const lines = (parts: readonly (readonly Position[])[]): Position[][] => parts.map(line);
  switch (geometry.type) {
    case 'Point':
      return { type: 'Point', coordinates: turn(geometry.coordinates) };
    case 'MultiPoint':
    case 'LineString':
      return { type: geometry.type, coordinates: line(geometry.coordinates) };
    case 'MultiLineString':
    case 'Polygon':
      return { type: geometry.type, coordinates: lines(geometry.coordinates) };
    case 'MultiPolygon':
      return { type: 'MultiPolygon', coordinates: geometry.coordinates.map(lines) };
    case 'GeometryCollection':
      return { type: 'GeometryCollection', geometries: geometry.geometries.map((each) => turnGeometry(each, turn)) };
  }
}
