import { err, ok, type Result } from '../../base/index.ts';
import { readJson } from '../../book/index.ts';

/** Anything between braces. */
export type JsonObject = { readonly [key: string]: unknown };

/** The features of a file, still unread. */
export type FeatureList = {
  readonly features: readonly unknown[];
  /** The map grid that the file names, if it names one. */
  readonly grid: string | null;
  /** What the collection calls itself, if anything. */
  readonly name: string | null;
};

const GEOMETRY_TYPES = [
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
  'GeometryCollection',
];
/** Names of longitude and latitude in degrees that are the same within a metre or two. EPSG:4269 is NAD83. */
const DEGREE_GRIDS = /(?:CRS84|EPSG:{1,2}(?:4326|4269|4979|4258)|WGS ?84|NAD83)$/i;

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * The features of a GeoJSON text (RFC 7946): of a collection, one feature, or a bare geometry.
 * Errors: `not-json`; `format-unknown` for TopoJSON; `format-invalid` where it is no GeoJSON.
 */
export function readFeatures(text: string, where: string): Result<FeatureList> {
  const json = readJson(text, where);
  if (!json.ok) return json;
  const root = json.value;
  if (!isObject(root) || typeof root.type !== 'string') {
    const hint = 'Choose a file that begins with {"type": "FeatureCollection".';
    return err('format-invalid', where, 'The file is JSON, but it has no GeoJSON type.', hint);
  }
  const grid = gridName(root);
  const name = typeof root.name === 'string' && root.name.trim() !== '' ? root.name.slice(0, 120) : null;
  if (root.type === 'FeatureCollection') {
    if (Array.isArray(root.features)) return ok({ features: root.features, grid, name });
    return err(
      'format-invalid',
      `${where}, features`,
      'The collection has no list of features.',
      'Export the file again.',
    );
  }
  if (root.type === 'Feature') return ok({ features: [root], grid, name: null });
  if (GEOMETRY_TYPES.includes(root.type)) {
    return ok({ features: [{ type: 'Feature', properties: {}, geometry: root }], grid, name: null });
  }
  if (root.type === 'Topology') {
    const hint = 'Convert it to GeoJSON. TopoJSON is often rounded to half a metre, which is too rough for areas.';
    return err('format-unknown', where, 'The file is TopoJSON, which is not read.', hint);
  }
  const hint = 'Choose a GeoJSON file with a FeatureCollection.';
  return err('format-invalid', `${where}, type`, `"${root.type.slice(0, 60)}" is no type of GeoJSON.`, hint);
}

/** The name in the old "crs" member, where it does not mean degrees; RFC 7946 files have none. */
function gridName(root: JsonObject): string | null {
  const { crs } = root;
  if (!isObject(crs)) return null;
  const name = isObject(crs.properties) ? crs.properties.name : undefined;
  return typeof name !== 'string' || DEGREE_GRIDS.test(name) ? null : name;
}
