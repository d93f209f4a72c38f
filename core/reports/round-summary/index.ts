export { roundSummary } from './round-summary.ts';
