export { methodName } from './facts.ts';
export {
  type FitCell,
  type FitColumn,
  type FitRow,
  type FitTable,
  fitTable,
  type Site,
} from './fit-table.ts';
export { TIGHT_SPARE_IN } from './ground-rules.ts';
export { methodsFor } from './methods.ts';
export { treatingMinutes } from './minutes.ts';
export { reach } from './reach.ts';
export type * from './types.ts';
export { liquidLb, machineFullLb } from './weight.ts';
