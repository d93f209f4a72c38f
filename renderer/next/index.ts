export { firstMissing, NEEDS, type Need } from './missing.ts';
export { NotYet } from './not-yet.tsx';
export { PlanProgress } from './plan-progress.tsx';
export { lookAtFirstSample } from './take-next-step.ts';
