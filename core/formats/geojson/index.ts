export {
  type MeasuredFile,
  type MeasuredProperty,
  type MeasuredZone,
  type MeasureProperty,
  measuredFromBook,
  measureGeojson,
} from './measured.ts';
export { assumedParking } from './parking.ts';
export { geojsonReader, readGeojsonText } from './source.ts';
export { geometryIssues } from './source-feature.ts';
export { readSourceGeometry, type SourceGeometry } from './source-geometry.ts';
