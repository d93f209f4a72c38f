export { createJobs, type Jobs, type PlanRequest } from './jobs.ts';
export type { PlanBase } from './messages.ts';
export { type PlanJob, type PlanOutcome, startPlanJob } from './plan-job.ts';
export { startPlanning } from './planning.ts';
export { throttleProgress } from './throttle.ts';
