export { commonWords } from './common.ts';
