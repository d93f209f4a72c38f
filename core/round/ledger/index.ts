export { activeNames, unweighed } from './contents.ts';
export { doneAmounts } from './done-amounts.ts';
export {
  arithmeticOf,
  type OpenLedger,
  openLedger,
  type PlannedAmount,
  type PlannedSums,
  plannedSums,
  seasonLedger,
} from './ledger.ts';
export { askLabels, type LabelAnswer } from './question.ts';
export { type Recipes, recipesOf } from './recipes.ts';
export type { SeasonOptions } from './season.ts';
export {
  type Amounts,
  type Application,
  type Ground,
  type LawnYear,
  type Limit,
  type LimitUse,
  NUTRIENTS,
  type Nutrient,
  type SeasonLedger,
  type ZoneYear,
} from './types.ts';
