export { PLAN_FORMAT, PLAN_VERSION, planSchema } from './schema.ts';
export type * from './types.ts';
