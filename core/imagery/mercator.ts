/** A tile of the web map: zoom, column from the west, row from the north. */
export type TileAt = { readonly z: number; readonly x: number; readonly y: number };

/** Half the width of the map of EPSG:3857 in its metres: pi x 6378137, the definition of the system (from memory). */
const HALF_WORLD_M = Math.PI * 6_378_137;
/** The northern edge of that map, degrees: 2 atan(e^pi) - 90. */
const MOST_LATITUDE = 85.05112877980659;

/** West, south, east and north of something, degrees. */
export type DegreeBounds = readonly [west: number, south: number, east: number, north: number];

/** Degrees at a share of the map: 0, 0 is its upper left corner and 1, 1 its lower right. */
export function shareToDegrees(x: number, y: number): readonly [longitude: number, latitude: number] {
  const latitude = (Math.atan(Math.sinh(Math.PI * (1 - 2 * y))) * 180) / Math.PI;
  return [360 * x - 180, latitude];
}

/**
 * The share of the map at a longitude and latitude, degrees: the inverse of `shareToDegrees`. Latitudes beyond the
 * map's edge count as the edge.
 */
export function degreesToShare(longitude: number, latitude: number): readonly [x: number, y: number] {
  const capped = Math.min(MOST_LATITUDE, Math.max(-MOST_LATITUDE, latitude));
  return [(longitude + 180) / 360, 0.5 - Math.asinh(Math.tan((capped * Math.PI) / 180)) / (2 * Math.PI)];
}

/** True for a tile that is on the map: a whole zoom from 0 to `mostZoom`, and a column and row that it has. */
export function isTile({ z, x, y }: TileAt, mostZoom: number): boolean {
  const across = 2 ** z;
  return [z, x, y].every((each) => Number.isInteger(each) && each >= 0) && z <= mostZoom && x < across && y < across;
}

/** The zoom at which a pixel of a 256-pixel tile covers about as much ground as a picture's pixel, rounded up. */
export function zoomForPixel(metresPerPixel: number, latitude: number): number {
  const worldM = 2 * HALF_WORLD_M * Math.cos((latitude * Math.PI) / 180);
  return Math.ceil(Math.log2(worldM / 256 / metresPerPixel) - 0.01);
}
