export {
  type MeasuredFile,
  type MeasuredProperty,
  type MeasuredZone,
  type MeasureProperty,
  measuredFromBook,
  measureGeojson,
} from './measured.ts';
export { previewGeojson } from './preview.ts';
export { geojsonReader } from './source.ts';
