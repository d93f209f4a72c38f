import { boomSheet, speedSheet } from './boom-sheets.ts';
import { catchSheet } from './catch-sheet.ts';
import { granularSheet } from './granular-sheet.ts';
import { gunSheet } from './gun-sheet.ts';
import { mixSheet } from './mix-sheet.ts';
import type { Sheet } from './sheet.ts';
import { spreaderSheet } from './spreader-sheet.ts';
import { tipSheet } from './tip-sheet.ts';
import { aeratorSheet, capacitySheet } from './work-sheets.ts';

/** Every calculation of the bench. */
export const SHEETS: readonly Sheet[] = [
  boomSheet,
  tipSheet,
  speedSheet,
  spreaderSheet,
  gunSheet,
  catchSheet,
  mixSheet,
  granularSheet,
  capacitySheet,
  aeratorSheet,
];
