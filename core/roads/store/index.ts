export { fingerprintOf } from './fingerprint.ts';
export { readRoadMap } from './read.ts';
export { writeRoadMap } from './write.ts';
