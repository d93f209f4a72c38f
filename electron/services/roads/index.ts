export { type Desk, openDesk } from './desk.ts';
export { gatherDrives } from './gather.ts';
export { type ImportOptions, importRoads } from './import-roads.ts';
export type { RoadsAbout } from './messages.ts';
export { roadFilesOf } from './road-files.ts';
export { type BookAt, createRoads, type Roads } from './roads.ts';
