export { geojsonSeqReader } from './reader.ts';
