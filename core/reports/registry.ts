import type { Sheet } from './blocks.ts';
import type { SheetInput, SheetScope } from './input.ts';
import { loadTickets } from './load-tickets/index.ts';
import { mapPages } from './map-pages/index.ts';
import { measureSheet } from './measure-sheet/index.ts';
import { runSheet } from './run-sheet/index.ts';
import { SHEET_NAMES } from './texts/index.ts';
import { truckList } from './truck-list/index.ts';

type Kind<Input extends SheetInput> = {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  /** What one is chosen by. */
  readonly scope: Input['scope'];
  /** True where it shows the passes of a day, which are laid beforehand. */
  readonly drawsPasses?: true;
  readonly make: (input: Input) => Sheet;
};

/** A kind of sheet: what it is called, what it is for, what it is chosen by, and how it is made. */
export type SheetKind = { [Scope in SheetScope]: Kind<Extract<SheetInput, { readonly scope: Scope }>> }[SheetScope];

/** Every sheet. A new one is a folder beside these, its words in texts, and a line here. */
export const SHEETS: readonly SheetKind[] = [
  { id: 'run-sheet', ...SHEET_NAMES['run-sheet'], scope: 'day', make: runSheet },
  { id: 'load-tickets', ...SHEET_NAMES['load-tickets'], scope: 'day', make: loadTickets },
  { id: 'truck-list', ...SHEET_NAMES['truck-list'], scope: 'day', make: truckList },
  { id: 'map-pages', ...SHEET_NAMES['map-pages'], scope: 'day', drawsPasses: true, make: mapPages },
  { id: 'measure-sheet', ...SHEET_NAMES['measure-sheet'], scope: 'property', make: measureSheet },
];
