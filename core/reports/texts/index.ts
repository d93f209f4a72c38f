export { CAUTION_WORDS, CAUTIONS } from './cautions.ts';
export { AGITATION, CALIBRATION, LABEL, LOAD_TICKETS, MIXING } from './load-tickets.ts';
export { MAP_LEGEND, MAP_PAGES } from './map-pages.ts';
export { FOUND, MEASURE_SHEET, QUOTE } from './measure-sheet.ts';
export { dateWord, PAGE, PAPER } from './page.ts';
export { RUN_ROWS, RUN_SHEET } from './run-sheet.ts';
export { SHEET_NAMES } from './sheet-names.ts';
export { STOCK } from './stock.ts';
export { TRUCK_LIST } from './truck-list.ts';
