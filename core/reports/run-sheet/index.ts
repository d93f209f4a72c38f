export { areasOf } from './maps.ts';
export { runSheet } from './run-sheet.ts';
