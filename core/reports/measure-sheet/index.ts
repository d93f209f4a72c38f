export { measureSheet } from './measure-sheet.ts';
