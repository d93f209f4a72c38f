import type { Gate, Property } from '../../book/index.ts';
import { gpxFile, gpxPoint } from './gpx-parts.ts';
import type { WriteOptions } from './options.ts';

/** GPX 1.1 waypoints: where to park at each property, and its gates with a place. */
export function writeGpx(properties: readonly Property[], { title }: WriteOptions): string {
  const points = properties.flatMap((property) => [
    parkingPoint(property),
    ...property.gates.flatMap((gate) => gatePoint(property, gate)),
  ]);
  return gpxFile(title, '', points);
}

function parkingPoint({ id, name, address, parking }: Property): string {
  return gpxPoint('wpt', { at: parking, name, cmt: id, desc: address, type: 'parking' });
}

function gatePoint(property: Property, { id, name, at, clearWidthIn, locked }: Gate): readonly string[] {
  if (at === undefined) return [];
  const desc = `clear width ${clearWidthIn} in${locked ? ', locked' : ''}`;
  return [gpxPoint('wpt', { at, name, cmt: id, desc, src: property.id, type: 'gate' })];
}
