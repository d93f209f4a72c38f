export { previewLawns, previewMatrix } from './csv/index.ts';
export {
  assumedParking,
  geojsonReader,
  type MeasuredFile,
  type MeasuredProperty,
  type MeasuredZone,
  type MeasureProperty,
  measuredFromBook,
  measureGeojson,
  previewGeojson,
} from './geojson/index.ts';
export { geopackageReader } from './geopackage/index.ts';
export { findGroundReader, GROUND_READERS } from './ground-readers.ts';
export { GROUND_READ_OPTIONS } from './read-options.ts';
export { FORMATS, findFormat } from './registry.ts';
export { shapefileReader } from './shapefile/index.ts';
export type * from './types.ts';
