export type { Foothold } from './climb.ts';
export { contract, type Hierarchy } from './contract.ts';
export { meetAll } from './meet.ts';
