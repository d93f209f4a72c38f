export { recordHistory } from './record-history.ts';
