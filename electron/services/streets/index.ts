export { readStreetFile } from './read-file.ts';
export { createStreets, type Streets } from './streets.ts';
