export type * from './brand.ts';
export { quantity } from './brand.ts';
