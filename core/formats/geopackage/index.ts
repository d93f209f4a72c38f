export { geopackageReader } from './source.ts';
