export type { WriteOptions } from './options.ts';
export type { PlanSource, PlanWriteOptions } from './plan/source.ts';
export { PLAN_WRITERS, type PlanFileWriter } from './plan/writers.ts';
export { writeRecordsTable } from './records.ts';
export { writeBuyingTable, writeCostTable, writeLedgerTable } from './season.ts';
export { type GroundWriter, WRITERS } from './writers.ts';
