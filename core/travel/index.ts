export {
  countEstimates,
  describeTravel,
  type EstimateCount,
  type TravelKind,
  travelKindOf,
  travelNotes,
} from './describe.ts';
export { type DriveTable, NO_WAY, type OffRoad, offRoadWords, placesOffRoad, positionKey } from './drive-table.ts';
export { readDriveTable, writeDriveTable } from './drive-table-file.ts';
export { type DrivenLeg, drivenLegs, wentStraight } from './driven.ts';
export { type EstimatePort, estimatePort } from './estimate.ts';
export { LEAST_TRIPS, type LearnedClass, learnFactors, type Trip } from './learned.ts';
export { buildTravelTable } from './table.ts';
export type * from './types.ts';
