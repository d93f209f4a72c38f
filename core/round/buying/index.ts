export { roundCost } from './cost.ts';
export { buyingList } from './list.ts';
export {
  type BuyingList,
  type BuyLine,
  COST_PARTS,
  type CostPart,
  type LawnCost,
  type Order,
  type RoundCost,
  type Use,
  type WaterAt,
  type Week,
} from './types.ts';
export { roundsToCome, usesOfPlan, usesOfSums } from './uses.ts';
export { waterByFillPoint } from './water.ts';
export { weekOf } from './weeks.ts';
