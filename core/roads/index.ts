export { ROAD_CLASSES, type RoadClass } from './classes.ts';
export type { RoadNetwork } from './network/index.ts';
export { roadNetwork } from './network/index.ts';
export { type ReadRoadsOptions, type RoadSource, readRoads } from './read/index.ts';
export { roadPath, roadTable, type TableOptions } from './search/index.ts';
export {
  type ClassFactors,
  factorsAt,
  joinFactors,
  ROAD_SETTINGS,
  type RoadSettings,
  type TimeOfDay,
  type TruckLimits,
  type TurnSeconds,
} from './settings.ts';
export { SNAP_OPTIONS, type SnapOptions, snapPlaces } from './snap/index.ts';
export { readRoadMap, writeRoadMap } from './store/index.ts';
export type {
  AboutRoads,
  RoadCounts,
  RoadMap,
  RoadPath,
  RoadPlace,
  RoadTable,
  Snap,
  Snapping,
  Unsnapped,
} from './types.ts';
