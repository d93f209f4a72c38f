export { explainChoices } from './choices.ts';
export { explainDay } from './day.ts';
export { type Insertion, intoSlot, type PlanFacts } from './insertions.ts';
export { Legs } from './legs.ts';
export { lift, NO_LIMIT } from './lift.ts';
export { carryingLimits, scaleOf, stationLimits } from './limits.ts';
export type * from './types.ts';
export { explainUnserved } from './why-not.ts';
