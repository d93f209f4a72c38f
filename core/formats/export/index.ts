export { writeBuyingTable, writeCostTable, writeLedgerTable } from './season.ts';
export { type GroundWriter, WRITERS, type WriteOptions } from './writers.ts';
