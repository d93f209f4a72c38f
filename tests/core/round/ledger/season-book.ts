import type { Book, Product, Property, Round, Treatment, Visit } from '../../../../core/book/index.ts';
import { readBookValue } from '../../../../core/book/index.ts';
import type { Ground } from '../../../../core/round/ledger/index.ts';

/** Invented: a sprayed product in fl oz, a granular fertiliser, a liquid one, seed with starter. Rates are for easy sums. */
const VALUE = {
  format: 'swardway-book',
  version: 1,
  id: 'season',
  name: 'Season (invented)',
  invented: true,
  products: [
    {
      id: 'early',
      name: 'Early',
      form: 'liquid',
      unit: 'fl-oz',
      actives: [{ name: 'Holdanil', lbPerUnit: 0.02 }],
      label: { mostPerYear: 1 },
    },
    {
      id: 'meal',
      name: 'Meal',
      form: 'granular',
      unit: 'lb',
      analysis: { nitrogen: 0.2, phosphate: 0.05, potash: 0.1 },
      label: {},
    },
    {
      id: 'feed',
      name: 'Feed',
      form: 'liquid',
      unit: 'fl-oz',
      lbPerGal: 10,
      analysis: { nitrogen: 0.25, phosphate: 0, potash: 0 },
      label: {},
    },
    { id: 'grass', name: 'Grass', form: 'seed', unit: 'lb', label: {} },
  ],
  mixes: [
    {
      id: 'early-mix',
      name: 'Early mix',
      carrierGalPer1000SqFt: 2,
      parts: [{ productId: 'early', amountPer1000SqFt: 0.4 }],
    },
    {
      id: 'feed-mix',
      name: 'Feed mix',
      carrierGalPer1000SqFt: 1,
      parts: [{ productId: 'feed', amountPer1000SqFt: 25.6 }],
    },
  ],
  treatments: [
    { id: 'spray', name: 'Spray', kind: 'spray', mixId: 'early-mix' },
    { id: 'feed', name: 'Feed', kind: 'spray', mixId: 'feed-mix' },
    {
      id: 'meal',
      name: 'Meal',
      kind: 'spread',
      productId: 'meal',
      rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: 1 },
    },
    { id: 'sow', name: 'Sow', kind: 'seed', productId: 'grass', lbPer1000SqFt: 5 },
  ],
  properties: ['one', 'two'].map((id) => ({
    id,
    name: `Lawn ${id}`,
    parking: [-89, 40],
    zones: [
      { id: 'front', name: 'front', shape: { kind: 'stated', areaSqFt: 4000 } },
      { id: 'back', name: 'back', shape: { kind: 'stated', areaSqFt: 6000 } },
    ],
  })),
  fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-89, 40], waterGpm: 20 }],
  rigs: [{ id: 'rig', name: 'Rig', homeId: 'shop', shiftStartMin: 420, shiftMin: 480, machines: [], payloadLb: 3000 }],
};

export const BASE: Book = bookOf(VALUE);

function bookOf(value: unknown): Book {
  const read = readBookValue(value, 'season');
  if (!read.ok) throw new Error(`${read.error.where}: ${read.error.detail}`);
  return read.value.book;
}

export function roundOf(
  id: string,
  dates: readonly string[],
  treatmentIds: readonly string[],
  more: Partial<Round> = {},
): Round {
  return {
    id,
    name: id,
    dates,
    treatmentIds,
    propertyIds: 'all',
    skipped: [],
    rigIds: ['rig'],
    wetGround: false,
    ...more,
  };
}

type Task = (Visit['outcome'] & { kind: 'done' })['tasks'][number];

export function doneOn(on: string, roundId: string, propertyId: string, tasks: readonly Task[]): Visit {
  return {
    id: `${on} ${roundId} ${propertyId}`,
    on,
    roundId,
    rigId: 'rig',
    propertyId,
    outcome: { kind: 'done', tasks },
    note: '',
  };
}

export function skippedOn(on: string, roundId: string, propertyId: string): Visit {
  const outcome = { kind: 'skipped', reason: 'gate locked' } as const;
  return { id: `${on} ${roundId} ${propertyId}`, on, roundId, rigId: 'rig', propertyId, outcome, note: '' };
}

export function withLabel(book: Book, productId: string, label: Partial<Product['label']>): Book {
  const products = book.products.map((each) =>
    each.id === productId ? { ...each, label: { ...each.label, ...label } } : each,
  );
  return { ...book, products };
}

/** Stated areas; bands of 100 ft2. */
export const GROUND: Ground = {
  areaSqFt: (property, zoneId) => {
    const shape = property.zones.find((each) => each.id === zoneId)?.shape;
    return shape?.kind === 'stated' ? shape.areaSqFt : null;
  },
  bandSqFt: () => 100,
};

export function lawn(book: Book, id: string): Property {
  const found = book.properties.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no lawn ${id}`);
  return found;
}

export function treatment(book: Book, id: string): Treatment {
  const found = book.treatments.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no treatment ${id}`);
  return found;
}
