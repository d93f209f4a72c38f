export { demandFor } from './demand.ts';
export { treatedGround } from './ground.ts';
export {
  carrierLimitIssues,
  intervalIssues,
  RATE_GROUND,
  rateLimitIssues,
  rateWords,
  yearLimitIssues,
} from './label-limits.ts';
export {
  areaPerTank,
  bagsNeeded,
  hopperLoads,
  loadFor,
  type TankLoad,
  type TankLoads,
  tankLoads,
} from './loads.ts';
export { type ProductRate, productRates } from './product-rates.ts';
export type { DemandQuestion } from './question.ts';
export {
  amountInFill,
  amountPerGallon,
  per1000ToAcre,
  perAcreTo1000,
  productFor,
  spreadLbPer1000,
  waterIn,
} from './rates.ts';
export { type DemandTotals, totalDemand } from './totals.ts';
export type * from './types.ts';
