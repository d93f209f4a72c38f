export { shapefileReader } from './source.ts';
