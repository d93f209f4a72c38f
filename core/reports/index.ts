export type { Block, Column, MapArea, MapPoint, Sheet } from './blocks.ts';
export { sheetsHtml } from './html.ts';
export type { DayInput, PropertyInput, SheetInput, SheetPasses } from './input.ts';
export { SHEETS, type SheetKind } from './registry.ts';
export { sheetText } from './text.ts';
