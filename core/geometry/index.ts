export { coveredTwice, difference, grow, intersection, shrink, union, withoutHairs } from './booleans.ts';
export { type CommonGround, commonGround, type Lie, quickLie } from './common-ground.ts';
export { boxCentre, type DegreesBox, degreesBox, joinBoxes, polygonsOf, positionFault } from './degrees-box.ts';
export { distanceMetres } from './ellipsoid.ts';
export { type GeometryFault, type GeometryFaultCode, placeText } from './faults.ts';
export { type LocalPlane, localPlane, type PlanePoint, unwrapLongitude, wrapLongitude } from './local-plane.ts';
export { boundingBox, centreOf, containsPosition, cornersOf, nearestOnOutline } from './lonlat.ts';
export { type Outline, type RefusedOutline, readOutline } from './outline.ts';
export { outlinesOverlap } from './overlap.ts';
export { joinParts, partArea, partsOf, type RegionPart, toGeometry, toPolygons } from './parts.ts';
export { type PlaceIndex, placeIndex } from './place-index.ts';
export { type ProjectionReading, projectionFromEpsg, projectionFromWkt } from './projection.ts';
export { projectGeometry } from './projection-geometry.ts';
export type { Projection } from './projection-maker.ts';
export { type AreaReading, lineLengthMetres, outlineArea, ringAreaSquareMetres } from './quick-area.ts';
export {
  boxesMeet,
  EMPTY_REGION,
  type GridPath,
  isEmpty,
  pathLength,
  type Region,
  regionArea,
  regionOf,
  STEPS_PER_METRE,
} from './region.ts';
export { isBetween, turn } from './segments.ts';
export { type Obstacles, obstaclesOf, waysRound } from './way-round.ts';
