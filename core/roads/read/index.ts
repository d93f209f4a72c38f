export { readRoads } from './read-roads.ts';
export type { ReadRoadsOptions, RoadSource } from './types.ts';
