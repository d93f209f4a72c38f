export { applicationRecords } from './application-records.ts';
export { keptBlocks, missingBlocks } from './record-blocks.ts';
