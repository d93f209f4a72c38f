export {
  type Comparison,
  compareFleets,
  DIFFERENCE_WORDS,
  type Difference,
  type FleetResult,
  fleetResult,
  TIME_KINDS,
  type TimeKind,
} from './compare.ts';
export { bookOfFleet, fleetPlanName } from './fleet-round.ts';
