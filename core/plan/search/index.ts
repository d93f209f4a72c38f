export { type SolveOptions, type SolveRun, solve } from './solve.ts';
