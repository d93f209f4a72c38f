import type { Sheet } from './blocks.ts';
import type { SheetInput, SheetScope } from './input.ts';
import { loadTickets } from './load-tickets/index.ts';
import { measureSheet } from './measure-sheet/index.ts';
import { runSheet } from './run-sheet/index.ts';
import { truckList } from './truck-list/index.ts';

type Kind<Input extends SheetInput> = {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  /** What one is chosen by. */
  readonly scope: Input['scope'];
  readonly make: (input: Input) => Sheet;
};

/** A kind of sheet: what it is called, what it is for, what it is chosen by, and how it is made. */
export type SheetKind = { [Scope in SheetScope]: Kind<Extract<SheetInput, { readonly scope: Scope }>> }[SheetScope];

/** Every sheet. A new one is a folder beside these and a line here. */
export const SHEETS: readonly SheetKind[] = [
  { id: 'run-sheet', name: 'Run sheet', about: 'The day in order, for the crew', scope: 'day', make: runSheet },
  { id: 'load-tickets', name: 'Load tickets', about: 'One page for each fill', scope: 'day', make: loadTickets },
  { id: 'truck-list', name: 'Truck list', about: 'What to carry, and its weight', scope: 'day', make: truckList },
  {
    id: 'measure-sheet',
    name: 'Measure sheet',
    about: 'One lawn with its areas',
    scope: 'property',
    make: measureSheet,
  },
];
