export { FIT_KINDS, type FitKind, LEAST_PAIRS } from './fit.ts';
export { type ImageHead, readImageHead } from './image-head.ts';
export {
  type DegreeBounds,
  degreesToShare,
  isTile,
  shareToDegrees,
  type TileAt,
  zoomForPixel,
} from './mercator.ts';
export { type ControlPoint, type PictureSize, type Placement, placePicture } from './placement.ts';
export { mapFromCorners } from './screen.ts';
export { readTileTemplate, type TileTemplate } from './tile-template.ts';
export { type FlatPoint, mapPoint, type PlaneMap } from './transform.ts';
