import { ok, type Result } from '../../core/base/index.ts';
import type { Book, Position, Property, Round, TemperatureYear, TravelMatrix, Zone } from '../../core/book/index.ts';
import { references } from '../../core/checks/index.ts';
import { type Action, type AnyRecord, RECORD_NAMES, type RecordOf, type TableName } from '../../core/edit/index.ts';
import { applyIntake, type IntakePreview } from '../../core/intake/index.ts';
import { commonWords } from '../texts/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { edit, useBook } from './book.ts';
import { showError, showNews } from './notices.ts';
import { type Shelf, selectProperty, selectRound, selectShelf, selectZone, useSelection } from './selection.ts';
import { goTo } from './view.ts';

type Edited = Result<{ readonly label: string }>;

/** An id that none of the records has: the stem with the lowest free number. */
export function freshId(records: readonly { readonly id: string }[], stem: string): string {
  const taken = new Set(records.map((record) => record.id));
  let number = records.length + 1;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

/** Puts a record in place of the one with the same id, or adds it. */
export function putRecord(table: TableName, record: AnyRecord, label?: string): Edited {
  return edit(label === undefined ? { kind: 'put', table, record } : { kind: 'put', table, record, label });
}

/** Changes some members of a property as one step. */
export function changeProperty(property: Property, changes: Partial<Property>, label: string): Edited {
  return putRecord('properties', { ...property, ...changes }, label);
}

export function changeZone(property: Property, zoneId: string, changes: Partial<Zone>, label: string): Edited {
  const zones = property.zones.map((zone) => (zone.id === zoneId ? { ...zone, ...changes } : zone));
  return changeProperty(property, { zones }, label);
}

/** Takes a record out; the notice tells what names it still, and offers to take that back. */
export function removeRecord(table: TableName, id: string, name: string): void {
  const before = placesOfMissing();
  const done = edit({ kind: 'remove', table, id });
  if (!done.ok) {
    showError(done.error);
    return;
  }
  const now = placesOfMissing();
  const left = [...now].filter((each) => !before.has(each));
  showNews(storesWords.edits.isRemoved(sentence(RECORD_NAMES[table]), name, stillNamed(left)), true);
}

/** Where something is named that the open book does not have. */
function placesOfMissing(): ReadonlySet<string> {
  const { open } = useBook.getState();
  return new Set(open === null ? [] : references.find(open.book).map((each) => each.where));
}

/** "; still named by programme Standard, Spring and 2 more: see To check". */
function stillNamed(places: readonly string[]): string {
  const [first] = places;
  if (first === undefined) return '';
  const more = places.length > 1 ? storesWords.edits.andMore(places.length - 1) : '';
  return storesWords.edits.stillNamed(first, more);
}

export function removeLawn(propertyId: string): void {
  const property = useBook.getState().open?.book.properties.find((each) => each.id === propertyId);
  if (property === undefined) return;
  removeRecord('properties', propertyId, property.name);
  if (useSelection.getState().propertyId === propertyId) selectProperty(null);
}

/** Where a new lawn is put: what the map shows in its middle, asked when it is needed. */
let mapCentre: () => Position = () => [0, 0];

export function followMapCentre(centre: () => Position): void {
  mapCentre = centre;
}

/** The middle of what the map shows. */
export function mapMiddle(): Position {
  return mapCentre();
}

/** A lawn with one zone of a stated area, still 0; its outline can come later. */
export function bareLawn(id: string, name: string, address: string, parking: Property['parking']): Property {
  const zone: Zone = {
    id: 'whole',
    name: storesWords.edits.wholeLawn,
    shape: { kind: 'stated', areaSqFt: 0, method: '' },
    slopeDeg: 0,
    gateIds: [],
  };
  return {
    id,
    name,
    address,
    parking,
    noTrailer: false,
    gates: [],
    zones: [zone],
    exclusions: [],
    cautions: [],
    note: '',
  };
}

/** A new lawn in the middle of the map, for an old card. */
export function addLawn(): void {
  const { open } = useBook.getState();
  if (open === null) return;
  const id = freshId(open.book.properties, 'lawn');
  const record = bareLawn(id, commonWords.newLawn, '', mapCentre());
  const done = putRecord('properties', record, storesWords.edits.addLawn);
  if (!done.ok) {
    showError(done.error);
    return;
  }
  selectProperty(id);
  goTo('ground');
}

/** A new zone of the selected lawn, with a stated area that is still 0. */
export function addZone(): void {
  const { propertyId } = useSelection.getState();
  const property = useBook.getState().open?.book.properties.find((each) => each.id === propertyId);
  if (property === undefined) return;
  const id = freshId(property.zones, 'zone');
  const zone: Zone = {
    id,
    name: id.replace('-', ' '),
    shape: { kind: 'stated', areaSqFt: 0, method: '' },
    slopeDeg: 0,
    gateIds: [],
  };
  const done = changeProperty(property, { zones: [...property.zones, zone] }, 'Add zone');
  if (done.ok) selectZone(property.id, id);
  else showError(done.error);
}

/** Does exactly what was previewed, as one step; false where the book is no longer the one that was looked at. */
export function addImported(fileName: string, wish: ImportWish): boolean {
  const { open } = useBook.getState();
  if (open === null) return false;
  const action = importAction(open.book, fileName, wish);
  const done = action.ok ? edit(action.value) : action;
  if (done.ok) showNews(done.value.label, true);
  else showError(done.error);
  return done.ok;
}

/** What is to be imported: travel times, years of temperatures, or ground as it was previewed. */
export type ImportWish =
  | { readonly kind: 'matrix'; readonly matrix: TravelMatrix }
  | { readonly kind: 'temperatures'; readonly records: readonly TemperatureYear[] }
  | { readonly kind: 'ground'; readonly preview: IntakePreview };

export function importAction(book: Book, fileName: string, wish: ImportWish): Result<Action> {
  if (wish.kind === 'ground') return applyIntake(book, wish.preview);
  if (wish.kind === 'temperatures') {
    const actions = wish.records.map((record): Action => ({ kind: 'put', table: 'temperatures', record }));
    return ok({ kind: 'several', actions, label: storesWords.edits.addTemperatures(fileName) });
  }
  return ok({ kind: 'set', changes: { matrix: wish.matrix }, label: storesWords.edits.travelTimesOf(fileName) });
}

/** Adds a record to a shelf and selects it. */
export function addToShelf(shelf: Shelf, record: RecordOf<Shelf>): void {
  const done = putRecord(shelf, record);
  if (done.ok) selectShelf(shelf, record.id);
  else showError(done.error);
}

/** A copy of a record under an id and a name of its own, selected at once. */
export function duplicateOnShelf(shelf: Shelf, record: RecordOf<Shelf>): void {
  const records = useBook.getState().open?.book[shelf] ?? [];
  addToShelf(shelf, {
    ...record,
    id: freshId(records, record.id.replace(/-\d+$/, '')),
    name: storesWords.edits.copyOf(record.name),
  });
}

/** Changes some members of a round as one step. */
export function changeRound(round: Round, changes: Partial<Round>, label: string): Edited {
  const done = putRecord('rounds', { ...round, ...changes }, label);
  if (!done.ok) showError(done.error);
  return done;
}

export function addRound(round: Round): void {
  const done = putRecord('rounds', round);
  if (done.ok) selectRound(round.id);
  else showError(done.error);
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
