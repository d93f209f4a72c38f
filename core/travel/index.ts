export { describeTravel, estimatedPairs } from './describe.ts';
export { straightLineM } from './distance.ts';
export { estimatePort } from './estimate.ts';
export { matrixPort } from './matrix.ts';
export { buildTravelTable, tableFrom } from './table.ts';
export type * from './types.ts';
