export { kmlReader } from './reader.ts';
