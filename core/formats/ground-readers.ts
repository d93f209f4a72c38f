import { err, ok, type Result } from '../base/index.ts';
import { csvReader } from './csv/index.ts';
import { dxfReader } from './dxf/index.ts';
import { geojsonReader } from './geojson/index.ts';
import { geojsonSeqReader } from './geojson-seq/index.ts';
import { geopackageReader } from './geopackage/index.ts';
import { gpxReader } from './gpx/index.ts';
import { kmlReader } from './kml/index.ts';
import { shapefileReader } from './shapefile/index.ts';
import type { GroundReader } from './types.ts';

/** Every kind of file that ground can be read from, the surest signs first. A new one is a folder and a line here. */
export const GROUND_READERS: readonly GroundReader[] = [
  geopackageReader,
  shapefileReader,
  geojsonSeqReader,
  geojsonReader,
  kmlReader,
  gpxReader,
  dxfReader,
  csvReader,
];

/** The reader for a file, by its content first and its name's ending second. Error: `format-unknown`. */
export function findGroundReader(bytes: Uint8Array, fileName: string): Result<GroundReader> {
  const ending = fileName.toLowerCase().split('.').pop() ?? '';
  const alike = GROUND_READERS.filter((each) => each.looksLike(bytes, fileName));
  const named = GROUND_READERS.filter((each) => each.extensions.includes(ending));
  const found = alike.find((each) => named.includes(each)) ?? alike[0] ?? named[0];
  if (found !== undefined) return ok(found);
  const titles = GROUND_READERS.map((each) => each.title).join(', ');
  return err('format-unknown', fileName, 'The file is in no format that is read.', `These are read: ${titles}.`);
}
