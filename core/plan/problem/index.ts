export { buildProblem, type ProblemOptions } from './build.ts';
export type * from './types.ts';
