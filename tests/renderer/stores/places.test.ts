import { beforeEach, expect, it } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import { type Book, emptyBook, type Property } from '../../../core/book/index.ts';
import type { AddressAnswer } from '../../../core/places/index.ts';
import {
  addLawnAt,
  mayBePlaced,
  openPlaces,
  placeSought,
  showBook,
  tickSought,
  undo,
  useBook,
  usePlaces,
  useSelection,
} from '../../../renderer/stores/index.ts';
import { type FakeHost, installFakeHost, openBookOf } from '../fake-host.ts';

const card = (id: string, address: string, more: Partial<Property> = {}): Property => ({
  id,
  name: id,
  address,
  parking: [-83, 40],
  noTrailer: false,
  gates: [],
  zones: [{ id: 'z', name: 'z', shape: { kind: 'stated', areaSqFt: 5000, method: '' }, slopeDeg: 0, gateIds: [] }],
  exclusions: [],
  cautions: [],
  note: '',
  ...more,
});
const BOOK: Book = {
  ...emptyBook('a', 'A'),
  properties: [
    card('one', '1 Oak St'),
    card('two', '2 Oak St'),
    card('lost', '3 Nowhere'),
    card('by-hand', '4 Oak St', { placedBy: 'hand' }),
    card('from-file', '5 Oak St', { placedBy: 'file' }),
    card('no-address', ''),
  ],
};
const answerFor = (address: string): AddressAnswer =>
  address.includes('Oak')
    ? { kind: 'placed', at: [-82.5, 40.5], how: 'along Oak St', confidence: 'good', street: 'Oak St', range: [1, 9] }
    : { kind: 'not-placed', code: 'no-street', reason: 'No such street.' };
let host: FakeHost;
const lawn = (id: string) => useBook.getState().open?.book.properties.find((each) => each.id === id);

beforeEach(() => {
  host = installFakeHost();
  host.answer('places.list', () => ok([{ id: 's', name: 'streets', streets: 1, pieces: 1 }]));
  host.answer('places.find', ({ addresses }: { readonly addresses: readonly string[] }) =>
    ok(addresses.map(answerFor)),
  );
  showBook(openBookOf(BOOK));
  usePlaces.setState({ isOpen: false, streets: [], sought: [], isBusy: false });
});

it('seeks lawns with an address whose place nobody set, drawn or read from a file', () => {
  expect(BOOK.properties.filter(mayBePlaced).map(({ id }) => id)).toEqual(['one', 'two', 'lost']);
  const ring = [
    [-83, 40],
    [-83, 40.1],
    [-82.9, 40.1],
    [-83, 40],
  ] as [number, number][];
  const drawn = card('drawn', '6 Oak St', {
    zones: [
      {
        id: 'z',
        name: 'z',
        shape: { kind: 'drawn', geometry: { type: 'Polygon', coordinates: [ring] } },
        slopeDeg: 0,
        gateIds: [],
      },
    ],
  });
  expect(mayBePlaced(drawn)).toBe(false);
});

it('changes nothing until it is told to; then the ticked ones as one step, marked', async () => {
  await openPlaces();
  expect(usePlaces.getState().sought.map(({ property, chosen }) => [property.id, chosen])).toEqual([
    ['one', true],
    ['two', true],
    ['lost', false],
  ]);
  expect(lawn('one')?.parking).toEqual([-83, 40]);
  tickSought('two', false);
  placeSought();
  expect(lawn('one')).toMatchObject({ parking: [-82.5, 40.5], placedBy: 'address-range' });
  expect(lawn('two')?.parking).toEqual([-83, 40]);
  expect(lawn('lost')?.parking).toEqual([-83, 40]);
  expect(usePlaces.getState().isOpen).toBe(false);
  undo();
  expect(lawn('one')?.placedBy).toBeUndefined();
});

it('adds a lawn where its address is, selected and marked; without a place it adds none and says why', async () => {
  expect(await addLawnAt('9 Oak Street, Springfield')).toMatchObject({ kind: 'placed' });
  const added = useBook.getState().open?.book.properties.at(-1);
  expect(added).toMatchObject({
    name: '9 Oak Street',
    address: '9 Oak Street, Springfield',
    parking: [-82.5, 40.5],
    placedBy: 'address-range',
  });
  expect(useSelection.getState().propertyId).toBe(added?.id);
  const count = useBook.getState().open?.book.properties.length;
  expect(await addLawnAt('9 Nowhere')).toMatchObject({ kind: 'not-placed', reason: 'No such street.' });
  expect(useBook.getState().open?.book.properties).toHaveLength(count ?? 0);
});
