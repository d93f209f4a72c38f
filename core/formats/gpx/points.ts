import type { Position } from 'geojson';
import { isDegrees } from '../ring.ts';
import { numberAttribute, type XmlElement } from '../xml/index.ts';

/** The places of a list of points, in their order; how many of the points have none that can be read. */
export type PointList = { readonly positions: readonly Position[]; readonly unreadable: number };

/** Reads lat and lon, degrees on WGS84 (GPX 1.1 schema, wptType). */
export function readPoint(element: XmlElement): Position | null {
  const longitude = numberAttribute(element, 'lon');
  const latitude = numberAttribute(element, 'lat');
  if (longitude === null || latitude === null) return null;
  return isDegrees(longitude, latitude) ? [longitude, latitude] : null;
}

export function readPoints(elements: readonly XmlElement[]): PointList {
  const positions = elements.flatMap((each) => {
    const position = readPoint(each);
    return position === null ? [] : [position];
  });
  return { positions, unreadable: elements.length - positions.length };
}
