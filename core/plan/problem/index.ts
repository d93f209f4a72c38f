export { buildProblem } from './build.ts';
export { daysAboveMs, unevenCost } from './even-days.ts';
export { closedWords } from './open-days.ts';
export { machinesOutOn, needsMachine } from './outages.ts';
export type { ProblemOptions } from './problem-options.ts';
export { visitMs } from './strands.ts';
export { type HoursOfDays, hoursOfDays } from './treat-hours.ts';
export type * from './types.ts';
export type { UnderWay } from './under-way.ts';
