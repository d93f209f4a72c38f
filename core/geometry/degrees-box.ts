import type { AreaGeometry, Position } from '../book/index.ts';
import { distanceMetres } from './ellipsoid.ts';
import { fault, type GeometryFault, invalidFault, placeText } from './faults.ts';
import { unwrapLongitude, wrapLongitude } from './local-plane.ts';

/** Bounds in degrees. Longitudes are unwrapped to the first corner, so east >= west and east may exceed 180. */
export type DegreesBox = {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
};

export type BoxOrFault = { readonly box: DegreesBox } | { readonly fault: GeometryFault };

/** Outlines wider or higher than this are refused. */
const LARGEST_EXTENT_M = 10_000;
/** No lawn lies beyond these latitudes; a figure there is nearly always a longitude in the wrong place. */
const SOUTHERNMOST_LAWN = -60;
const NORTHERNMOST_LAWN = 84;

/**
 * Checks that an outline's corners are longitudes and latitudes in degrees and gives their bounds.
 * Faults: no corners or not numbers (`geometry-invalid`), not degrees or the wrong way round (`geometry-not-lonlat`),
 * more than 10 km across (`geometry-too-large`).
 */
export function degreesBox(geometry: AreaGeometry): BoxOrFault {
  let { west, south, east, north } = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  let reference: number | undefined;
  for (const polygon of polygonsOf(geometry)) {
    for (const ring of polygon) {
      for (const position of ring) {
        const problem = positionFault(position);
        if (problem !== null) return { fault: problem };
        reference ??= position[0];
        const longitude = unwrapLongitude(position[0], reference);
        if (longitude < west) west = longitude;
        if (longitude > east) east = longitude;
        if (position[1] < south) south = position[1];
        if (position[1] > north) north = position[1];
      }
    }
  }
  if (reference === undefined) return { fault: invalidFault('The outline has no corners.') };
  const box = { west, south, east, north };
  const tooLarge = extentFault(box);
  return tooLarge === null ? { box } : { fault: tooLarge };
}

/** The polygons of an outline, each a list of rings, the first one its shell. */
export function polygonsOf(geometry: AreaGeometry): readonly (readonly (readonly Position[])[])[] {
  return geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
}

/** The middle of a box, degrees; right across the 180th meridian as well. */
export function boxCentre({ west, south, east, north }: DegreesBox): Position {
  return [wrapLongitude((west + east) / 2), (south + north) / 2];
}

/** The smallest box round two boxes, unwrapped to the first one. */
export function joinBoxes(first: DegreesBox, second: DegreesBox): DegreesBox {
  const shift = unwrapLongitude(second.west, first.west) - second.west;
  return {
    west: Math.min(first.west, second.west + shift),
    south: Math.min(first.south, second.south),
    east: Math.max(first.east, second.east + shift),
    north: Math.max(first.north, second.north),
  };
}

/** What is wrong with one position as longitude and latitude in degrees; null where nothing is. */
export function positionFault(position: Position): GeometryFault | null {
  const [longitude, latitude] = position;
  if (!Number.isFinite(longitude) || !Number.isFinite(latitude)) {
    return invalidFault('A corner is not a pair of numbers.');
  }
  const eastWest = Math.abs(longitude);
  const northSouth = Math.abs(latitude);
  if (eastWest <= 180 && latitude >= SOUTHERNMOST_LAWN && latitude <= NORTHERNMOST_LAWN) return null;
  if (eastWest <= 90 && northSouth <= 180) return swappedFault(position);
  if (eastWest > 180 || northSouth > 180) return projectedFault(position);
  const words = `No lawn lies at latitude ${latitude} (longitude ${longitude}). Check the order: longitude first.`;
  return fault('geometry-not-lonlat', 'error', words);
}

function swappedFault([longitude, latitude]: Position): GeometryFault {
  return fault(
    'geometry-not-lonlat',
    'error',
    `The corner ${longitude}, ${latitude} reads as latitude ${latitude}, where no lawn lies: latitude and longitude look ` +
      'swapped. GeoJSON puts longitude first; export again in that order.',
  );
}

function projectedFault([x, y]: Position): GeometryFault {
  return fault(
    'geometry-not-lonlat',
    'error',
    `The corner ${x}, ${y} is not in degrees but looks like metres or feet of a map grid. Export again as longitude and ` +
      'latitude (WGS84, EPSG:4326).',
  );
}

function extentFault(box: DegreesBox): GeometryFault | null {
  const middle = (box.south + box.north) / 2;
  const isFar = box.east - box.west > 1 || box.north - box.south > 1;
  const width = isFar ? Infinity : distanceMetres([box.west, middle], [box.east, middle]);
  const height = isFar ? Infinity : distanceMetres([box.west, box.south], [box.west, box.north]);
  const extent = Math.max(width, height);
  if (extent <= LARGEST_EXTENT_M) return null;
  const corner: Position = [wrapLongitude(box.west), box.south];
  const size = Number.isFinite(extent) ? `${(extent / 1000).toFixed(1)} km` : 'more than 10 km';
  return fault(
    'geometry-too-large',
    'error',
    `The outline is ${size} across (from ${placeText(corner)}); the limit is 10 km. Check for a stray corner, or split it.`,
    corner,
  );
}
