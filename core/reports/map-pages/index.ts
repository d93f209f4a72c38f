export { mapPages } from './map-pages.ts';
export { passesWanted } from './wanted.ts';
