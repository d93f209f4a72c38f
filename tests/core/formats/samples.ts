import type { Position } from '../../../core/book/index.ts';
import type { Corner } from '../geometry/shapes.ts';
import { rectangle, ringAt } from '../geometry/shapes.ts';
import { feet, HOME } from '../measure/lawns.ts';

/** GeoJSON texts for tests, drawn in feet round an invented place. */

export type Json = Record<string, unknown>;

export const ringFt = (corners: readonly Corner[], centre: Position = HOME) => ringAt(centre, feet(corners));
export const boxFt = (west: number, south: number, east: number, north: number, centre: Position = HOME) =>
  ringFt(rectangle(west, south, east, north), centre);

export function feature(coordinates: unknown, properties: Json = {}, more: Json = {}): Json {
  return { type: 'Feature', properties, geometry: { type: 'Polygon', coordinates }, ...more };
}

export const collection = (...features: readonly unknown[]): string =>
  JSON.stringify({ type: 'FeatureCollection', features });
