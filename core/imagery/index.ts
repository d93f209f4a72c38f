export { FIT_KINDS, type FitKind, LEAST_PAIRS, usualFit } from './fit.ts';
export { type ControlPoint, type PictureSize, type Placement, placePicture } from './placement.ts';
export { mapFromCorners } from './screen.ts';
export { type FlatPoint, mapPoint, type PlaneMap } from './transform.ts';
