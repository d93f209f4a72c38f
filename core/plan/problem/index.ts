export { buildProblem, type ProblemOptions } from './build.ts';
export { visitMs } from './strands.ts';
export type * from './types.ts';
