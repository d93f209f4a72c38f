export { dxfReader } from './reader.ts';
