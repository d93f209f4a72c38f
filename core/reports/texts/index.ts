export { CAUTION_WORDS, CAUTIONS } from './cautions.ts';
export { FOUND, MEASURE_SHEET, QUOTE } from './measure-sheet.ts';
export { dateWord, PAGE, PAPER } from './page.ts';
export { SHEET_NAMES } from './sheet-names.ts';
export { STOCK } from './stock.ts';
