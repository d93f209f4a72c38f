export { type BandEdge, bandAreaSqFt } from './band.ts';
export { type EdgeKind, type EdgeLength, edgeLengths, edgeWords } from './edges.ts';
export {
  type FittedSlope,
  type HeightSample,
  sampleGrid,
  slopeFromHeights,
} from './elevation-slope.ts';
export { farthestFt } from './farthest.ts';
export { measureBook, measureProperty } from './measure-property.ts';
export { type ExcludedOutline, excludedOutlines, treatableGround, treatableOutline } from './outlines.ts';
export { lastChange, type MeasureChange, withPastMeasure } from './past-measure.ts';
export type { PlaceNames } from './places.ts';
export { repairPolygon } from './repair.ts';
export { type Stand, standsFor } from './stands.ts';
export type * from './types.ts';
export { cornerNoiseArea, outlineErrorArea, twoPointScaleShare } from './uncertainty.ts';
