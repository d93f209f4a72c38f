export { passHeadOf } from './book-head.ts';
export { angleOfBearing, bearingOfAngle, directionOptions } from './direction.ts';
export { type LocalRates, localRates } from './local-rates.ts';
export { type PlacedPasses, passesOnOutline } from './on-outline.ts';
export { planPasses } from './plan-passes.ts';
export { sidesOf } from './sides.ts';
export { swathNumber } from './swath-number.ts';
export type * from './types.ts';
