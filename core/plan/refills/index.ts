export { type Care, type Placement, placeRefills, RefillPlacer } from './placer.ts';
export type * from './types.ts';
