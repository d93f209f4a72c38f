export { countEstimates, describeTravel, type EstimateCount } from './describe.ts';
export { type EstimatePort, estimatePort } from './estimate.ts';
export { buildTravelTable } from './table.ts';
export type * from './types.ts';
