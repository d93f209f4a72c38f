export { PlanWriter } from './changed.ts';
export { explainPlan } from './explain.ts';
export { type GroundSums, groundWords, notReachedSqFt } from './ground.ts';
export type { Names } from './names.ts';
export { plannedDays } from './planned-days.ts';
export { readPlan, writePlan } from './read.ts';
export { planSchema } from './schema.ts';
export type * from './types.ts';
export { unplacedTask } from './unplaced.ts';
