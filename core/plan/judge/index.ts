export { judgePlan } from './judge.ts';
export type * from './types.ts';
