export { gpxReader } from './reader.ts';
