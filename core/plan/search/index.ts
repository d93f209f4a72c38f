export type { SolveRun } from './budget.ts';
export type { Exchange, Offer } from './exchange.ts';
export { type Keeping, startFrom } from './from-plan.ts';
export { type SolveOptions, solve } from './solve.ts';
export type { Start, StartRoute } from './start.ts';
export { isBetter } from './state.ts';
