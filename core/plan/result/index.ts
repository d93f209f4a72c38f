export { explainPlan } from './explain.ts';
export { readPlan, writePlan } from './read.ts';
export { PLAN_FORMAT, PLAN_VERSION, planSchema } from './schema.ts';
export type * from './types.ts';
