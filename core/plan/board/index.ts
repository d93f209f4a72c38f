export { Board } from './board.ts';
export { applyChange } from './change.ts';
export { improveFrom } from './improve.ts';
export { rehearsalOf } from './rehearsal.ts';
export type { Orphan, Taker } from './takers.ts';
export type * from './types.ts';
export { type GoCell, type GoRow, type GoTable, whoCanGo } from './who-can-go.ts';
