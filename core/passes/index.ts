export { passHeadOf } from './book-head.ts';
export { directionOptions } from './direction.ts';
export { passFault } from './gauge.ts';
export { type KeptFigures, keepFigures, keptFigures, passFigures } from './kept.ts';
export { type LocalRates, localRates } from './local-rates.ts';
export { type PassGround, type PassOutline, type PlacedPasses, passesOnOutline } from './on-outline.ts';
export { passPicture } from './picture.ts';
export type * from './picture-types.ts';
export { planPasses } from './plan-passes.ts';
export { sidesOf } from './sides.ts';
export { swathNumber } from './swath-number.ts';
export type * from './types.ts';
export {
  type KnownPasses,
  knownPassesWith,
  type PassesOf,
  type ZonePasses,
  zonePasses,
  zonePassesWith,
} from './zone-passes.ts';
