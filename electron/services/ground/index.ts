export { createGround, type Ground, passingFolder } from './ground.ts';
export { type ReadGroundOptions, readElevationFile, readGroundFile } from './read-ground.ts';
