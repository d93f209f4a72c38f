export { methodName } from './facts.ts';
export {
  type FitCell,
  type FitColumn,
  type FitRow,
  type FitTable,
  type FitTrim,
  fitTable,
  type Site,
} from './fit-table.ts';
export { TIGHT_SPARE_IN } from './ground-rules.ts';
export { methodsFor } from './methods.ts';
export { treatingMinutes } from './minutes.ts';
export { reach } from './reach.ts';
export { type TrimSource, type TrimTool, trimTool } from './trim-tool.ts';
export type * from './types.ts';
export { NO_ROOM, NOWHERE } from './types.ts';
export { drawnCompartment, joinedCompartments } from './vessels.ts';
export { liquidLb, machineFullLb } from './weight.ts';
