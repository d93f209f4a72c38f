export type { ReadRoadsOptions, RoadSource } from './types.ts';
