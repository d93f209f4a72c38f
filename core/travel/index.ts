export {
  countEstimates,
  describeTravel,
  type EstimateCount,
  type TravelKind,
  travelKindOf,
  travelNotes,
} from './describe.ts';
export { type DrivenLeg, drivenLegs, wentStraight } from './driven.ts';
export { type EstimatePort, estimatePort } from './estimate.ts';
export { LEAST_TRIPS, type LearnedClass, learnFactors, type Trip } from './learned.ts';
export { readRoadTable, writeRoadTable } from './road-table-file.ts';
export { NO_WAY, placesOffRoad, positionKey, type RoadTable } from './roads.ts';
export { buildTravelTable } from './table.ts';
export type * from './types.ts';
