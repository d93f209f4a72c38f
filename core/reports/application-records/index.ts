export { applicationRecords } from './application-records.ts';
export { draftBlocks, keptBlocks, missingBlocks } from './record-blocks.ts';
