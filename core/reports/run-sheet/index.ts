export { areasOf, runSheet } from './run-sheet.ts';
