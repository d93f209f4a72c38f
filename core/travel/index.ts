export { countEstimates, describeTravel, type EstimateCount } from './describe.ts';
export { type EstimatePort, estimatePort } from './estimate.ts';
export { matrixPort } from './matrix.ts';
export { buildTravelTable, tableFrom } from './table.ts';
export type * from './types.ts';
