export { explainChoices } from './choices.ts';
export { explainDay } from './day.ts';
export type * from './types.ts';
export { explainUnserved } from './why-not.ts';
