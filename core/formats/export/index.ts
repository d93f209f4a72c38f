export { type GroundWriter, WRITERS, type WriteOptions } from './writers.ts';
