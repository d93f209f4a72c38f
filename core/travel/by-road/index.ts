export {
  type DrivenRoads,
  type DriveOptions,
  drivenRoads,
  drivePositions,
  driveTable,
} from './drives.ts';
export { driveFactors, mostMetres, roadSettingsOf } from './settings.ts';
export { type Learnt, learnFromDrives, waysAlong } from './ways.ts';
