import { create } from 'zustand';

export const SHED_SHELVES = [
  'machines',
  'handMethods',
  'rigs',
  'fillPoints',
  'products',
  'mixes',
  'treatments',
  'applicators',
] as const;
/** A table of the shed: the member of the book that it edits. */
export type Shelf = (typeof SHED_SHELVES)[number];
/** What the shed can show: one of its tables, or what holds for the whole book: money and driving, and roads. */
export type ShedPlace = Shelf | 'terms' | 'roads';

type SelectionState = {
  readonly propertyId: string | null;
  readonly zoneId: string | null;
  readonly shelf: ShedPlace;
  readonly shelfRecordId: string | null;
  readonly roundId: string | null;
  readonly date: string | null;
  readonly rigId: string | null;
  readonly stopNumber: number | null;
  readonly loadNumber: number | null;
  /** Moment under the ribbon's cursor, seconds after midnight; null while there is none. */
  readonly cursorSec: number | null;
  readonly sheetId: string | null;
  /** Whether the rest of a day is shown, where it was planned anew, instead of the day as it was planned. */
  readonly showsRest: boolean;
};

const NOTHING: SelectionState = {
  propertyId: null,
  zoneId: null,
  shelf: 'machines',
  shelfRecordId: null,
  roundId: null,
  date: null,
  rigId: null,
  stopNumber: null,
  loadNumber: null,
  cursorSec: null,
  sheetId: null,
  showsRest: true,
};

/** What is selected. Lists, map and ribbon share it. */
export const useSelection = create<SelectionState>(() => NOTHING);

export function clearSelection(): void {
  useSelection.setState(NOTHING);
}

export function selectProperty(propertyId: string | null): void {
  useSelection.setState({ propertyId, zoneId: null });
}

export function selectZone(propertyId: string, zoneId: string | null): void {
  useSelection.setState({ propertyId, zoneId });
}

export function selectShelf(shelf: ShedPlace, shelfRecordId: string | null = null): void {
  useSelection.setState({ shelf, shelfRecordId });
}

export function selectRound(roundId: string | null): void {
  useSelection.setState({ roundId, date: null, rigId: null, stopNumber: null, loadNumber: null, cursorSec: null });
}

export function selectDay(date: string, rigId: string): void {
  useSelection.setState({ date, rigId, stopNumber: null, loadNumber: null, cursorSec: null });
}

/** Selects a stop of the day, and its property with it. */
export function selectStop(stopNumber: number | null, propertyId: string | null): void {
  useSelection.setState({ stopNumber, propertyId, zoneId: null, loadNumber: null });
}

export function selectLoad(loadNumber: number | null): void {
  useSelection.setState({ loadNumber });
}

export function moveCursor(cursorSec: number | null): void {
  useSelection.setState({ cursorSec });
}

export function showRest(showsRest: boolean): void {
  useSelection.setState({ showsRest, stopNumber: null, loadNumber: null, cursorSec: null });
}

/** Stands among the sheets for the files that other programs read. */
export const EXCHANGE_ID = 'files';

export function selectSheet(sheetId: string): void {
  useSelection.setState({ sheetId });
}
