export { FIT_KINDS, type FitKind, LEAST_PAIRS, usualFit } from './fit.ts';
export { type ImageHead, readImageHead } from './image-head.ts';
export {
  type DegreeBounds,
  degreesToShare,
  HALF_WORLD_M,
  isTile,
  MOST_LATITUDE,
  shareToDegrees,
  type TileAt,
  tileBounds,
  zoomForPixel,
} from './mercator.ts';
export { type ControlPoint, type PictureSize, type Placement, placePicture } from './placement.ts';
export { mapFromCorners } from './screen.ts';
export { readTileTemplate, type TileTemplate } from './tile-template.ts';
export { type FlatPoint, mapPoint, type PlaneMap } from './transform.ts';
