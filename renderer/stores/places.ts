import { create } from 'zustand';
import type { Property } from '../../core/book/index.ts';
import type { StreetsInfo } from '../../core/contract/index.ts';
import type { Action } from '../../core/edit/index.ts';
import type { AddressAnswer } from '../../core/places/index.ts';
import { commonWords } from '../texts/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { edit, useBook } from './book.ts';
import { bareLawn, freshId } from './edits.ts';
import { pickFile } from './files.ts';
import { askHost } from './host.ts';
import { say, showError, showNews } from './notices.ts';
import { selectProperty } from './selection.ts';
import { goTo, showSelectionOnMap } from './view.ts';

/** A lawn whose place is sought by its address. */
export type SoughtLawn = {
  readonly property: Property;
  readonly answer: AddressAnswer;
  readonly chosen: boolean;
};

type PlacesState = {
  readonly isOpen: boolean;
  readonly streets: readonly StreetsInfo[];
  readonly sought: readonly SoughtLawn[];
  readonly isBusy: boolean;
};

/** The window in which addresses are looked up in street files. */
export const usePlaces = create<PlacesState>(() => ({ isOpen: false, streets: [], sought: [], isBusy: false }));

/**
 * A lawn whose place may be only assumed: it has an address and no outline, and nobody set the place by hand or brought it in a
 * file.
 */
export function mayBePlaced({ address, zones, placedBy }: Property): boolean {
  const isDrawn = zones.some(({ shape }) => shape.kind === 'drawn');
  return address.trim() !== '' && !isDrawn && placedBy !== 'hand' && placedBy !== 'file';
}

export async function openPlaces(): Promise<void> {
  usePlaces.setState({ isOpen: true, sought: [] });
  await loadStreetList();
}

export function closePlaces(): void {
  usePlaces.setState({ isOpen: false, sought: [] });
}

async function loadStreetList(): Promise<void> {
  const streets = await askHost('places.list', {});
  if (streets === null) return;
  usePlaces.setState({ streets });
  await seek();
}

/** Looks up every lawn that may be placed. Nothing is changed yet. */
async function seek(): Promise<void> {
  const properties = (useBook.getState().open?.book.properties ?? []).filter(mayBePlaced);
  if (usePlaces.getState().streets.length === 0 || properties.length === 0) {
    usePlaces.setState({ sought: [] });
    return;
  }
  usePlaces.setState({ isBusy: true });
  const answers = await askHost('places.find', { addresses: properties.map(({ address }) => address.slice(0, 4000)) });
  usePlaces.setState({ isBusy: false });
  if (answers === null) return;
  const sought = properties.flatMap((property, index): readonly SoughtLawn[] => {
    const answer = answers[index];
    return answer === undefined ? [] : [{ property, answer, chosen: answer.kind === 'placed' }];
  });
  usePlaces.setState({ sought });
  say(storesWords.places.placed(sought.filter(({ chosen }) => chosen).length, sought.length));
}

export async function openStreetFile(): Promise<void> {
  const picked = await pickFile('streets');
  if (picked === null) return;
  usePlaces.setState({ isBusy: true });
  const loaded = await askHost('places.load', { token: picked.token });
  usePlaces.setState({ isBusy: false });
  if (loaded === null) return;
  const unused = loaded.unused === 0 ? '' : storesWords.places.unused(loaded.unused);
  showNews(storesWords.places.read(loaded.name, loaded.streets, unused));
  await loadStreetList();
}

export async function forgetStreets(streetsId: string): Promise<void> {
  await askHost('places.forget', { streetsId });
  await loadStreetList();
}

export function tickSought(propertyId: string, chosen: boolean): void {
  usePlaces.setState(({ sought }) => ({
    sought: sought.map((each) => (each.property.id === propertyId ? { ...each, chosen } : each)),
  }));
}

/** Puts the ticked lawns where their addresses are, as one step. */
export function placeSought(): void {
  const actions = usePlaces
    .getState()
    .sought.flatMap(({ property, answer, chosen }): readonly Action[] =>
      chosen && answer.kind === 'placed'
        ? [{ kind: 'put', table: 'properties', record: { ...property, parking: answer.at, placedBy: 'address-range' } }]
        : [],
    );
  const count = commonWords.lawns(actions.length);
  const done = edit({ kind: 'several', label: storesWords.places.place(count), actions });
  if (!done.ok) {
    showError(done.error);
    return;
  }
  closePlaces();
  showNews(storesWords.places.placedAdvice(count), true);
}

/** A new lawn of a stated area where its address is. The answer says why there is none. */
export async function addLawnAt(address: string): Promise<AddressAnswer | null> {
  const { open } = useBook.getState();
  const answers = open === null ? null : await askHost('places.find', { addresses: [address] });
  const answer = answers?.[0] ?? null;
  if (open === null || answer === null || answer.kind === 'not-placed') return answer;
  const record = lawnAt(freshId(open.book.properties, 'lawn'), address, answer.at);
  const done = edit({ kind: 'put', table: 'properties', record, label: storesWords.places.addLawn(address) });
  if (!done.ok) {
    showError(done.error);
    return null;
  }
  closePlaces();
  selectProperty(record.id);
  goTo('ground');
  showSelectionOnMap();
  return answer;
}

function lawnAt(id: string, address: string, parking: Property['parking']): Property {
  return { ...bareLawn(id, address.split(',')[0]?.trim() || address, address, parking), placedBy: 'address-range' };
}
