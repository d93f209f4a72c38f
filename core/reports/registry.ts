import { accessList } from './access-list/index.ts';
import { applicationRecords } from './application-records/index.ts';
import type { Sheet } from './blocks.ts';
import { calibrationRecord } from './calibration-record/index.ts';
import { fleetComparison } from './fleet-comparison/index.ts';
import type { SheetInput, SheetScope } from './input.ts';
import { loadTickets } from './load-tickets/index.ts';
import { mapPages } from './map-pages/index.ts';
import { measureSheet } from './measure-sheet/index.ts';
import { notices, postings } from './notices/index.ts';
import { recordHistory } from './record-history/index.ts';
import { roundSummary } from './round-summary/index.ts';
import { runSheet } from './run-sheet/index.ts';
import { seasonLedgerSheet } from './season-ledger/index.ts';
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
  /** True for what the crew does not take along; it is made where it is asked for by name. */
  readonly forOffice?: true;
  /**
   * True where it holds application records, which last as they were written: it is told in the units, by the clock and with the dates of
   * the book itself, however the reader likes them.
   */
  readonly holdsRecords?: true;
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
  {
    id: 'application-records',
    ...SHEET_NAMES['application-records'],
    scope: 'day',
    forOffice: true,
    holdsRecords: true,
    make: applicationRecords,
  },
  { id: 'access-list', ...SHEET_NAMES['access-list'], scope: 'day', forOffice: true, make: accessList },
  {
    id: 'record-history',
    ...SHEET_NAMES['record-history'],
    scope: 'property',
    holdsRecords: true,
    make: recordHistory,
  },
  { id: 'notices', ...SHEET_NAMES.notices, scope: 'day', forOffice: true, make: notices },
  { id: 'postings', ...SHEET_NAMES.postings, scope: 'day', forOffice: true, make: postings },
  { id: 'round-summary', ...SHEET_NAMES['round-summary'], scope: 'round', make: roundSummary },
  { id: 'fleet-comparison', ...SHEET_NAMES['fleet-comparison'], scope: 'round', make: fleetComparison },
  { id: 'season-ledger', ...SHEET_NAMES['season-ledger'], scope: 'year', make: seasonLedgerSheet },
  { id: 'calibration-record', ...SHEET_NAMES['calibration-record'], scope: 'book', make: calibrationRecord },
];
