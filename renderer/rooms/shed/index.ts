export { applicatorShelf } from './applicators.tsx';
export type { Column } from './column.tsx';
export { handMethodShelf } from './hand-methods.tsx';
export { machineShelf } from './machines.tsx';
export { mixShelf, productShelf } from './products.tsx';
export { fillPointShelf, rigShelf } from './rigs.tsx';
export { ShedRoom } from './shed-room.tsx';
export type { ShelfPlan } from './shelf.ts';
export { treatmentShelf } from './treatments.tsx';
