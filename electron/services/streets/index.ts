export { createStreets, type Streets } from './streets.ts';
