export type { Block, Column, MapArea, MapPicture, MapPoint, Sheet } from './blocks.ts';
export { sheetsHtml } from './html.ts';
export type {
  BookInput,
  DayInput,
  DayPasses,
  PropertyInput,
  RoundInput,
  SheetInput,
  SheetPasses,
  SheetScope,
  YearInput,
} from './input.ts';
export { passesWanted } from './map-pages/index.ts';
export { FIELD_NAMES } from './notices/index.ts';
export { PAPERS, type PageOptions, type Paper, PRINTS, type Print, paperOf } from './page.ts';
export { SHEETS, type SheetKind } from './registry.ts';
export { sheetText } from './text.ts';
export { CAUTION_WORDS } from './texts/index.ts';
export { type DayDrive, type DayWays, drivesOfDay } from './ways.ts';
