import * as v from 'valibot';
import { type Book, bookSchema, type Property, type Rig, type Treatment, type Zone } from '../../../core/book/index.ts';
import type { ZoneMeasure } from '../../../core/measure/index.ts';
import type { Method, ReachQuestion } from '../../../core/reach/index.ts';
import { quantity } from '../../../core/units/index.ts';

/** An invented yard for the tests of reach, demand and travel: names, sizes and rates are made up and not for use. */
export function sampleBook(): Book {
  return v.parse(bookSchema, {
    format: 'swardway-book',
    version: 1,
    id: 'b',
    name: 'Invented, not for use',
    properties: [
      {
        id: 'elm',
        name: 'Elm 1',
        parking: [-83, 40],
        gates: [
          { id: 'side', name: 'Side', clearWidthIn: 48 },
          { id: 'arch', name: 'Arch', clearWidthIn: 37 },
        ],
        zones: [
          { id: 'front', name: 'front', shape: { kind: 'stated', areaSqFt: 5000 } },
          {
            id: 'back',
            name: 'back',
            shape: { kind: 'stated', areaSqFt: 3000 },
            gateIds: ['side', 'arch'],
            slopeDeg: 8,
          },
        ],
      },
    ],
    machines: [
      {
        id: 'heron',
        name: 'Heron',
        what: 'stand-on',
        transitWidthIn: 36,
        emptyWeightLb: 500,
        maxSlopeDeg: 15,
        compartments: [
          { kind: 'tank', id: 't', name: 'tank', capacityGal: 20, sumpGal: 1 },
          { kind: 'hopper', id: 'h', name: 'hopper', capacityLb: 120 },
        ],
        heads: [
          { id: 'boom', name: 'boom', purpose: 'spray', swathFt: 8, speedMph: 4, compartmentIds: ['t'] },
          { id: 'disc', name: 'disc', purpose: 'spread', swathFt: 10, speedMph: 4, compartmentIds: ['h'] },
        ],
      },
      {
        id: 'plug',
        name: 'Plug',
        what: 'walk-behind',
        transitWidthIn: 30,
        emptyWeightLb: 400,
        maxSlopeDeg: 10,
        heads: [{ id: 'tines', name: 'tines', purpose: 'aerate', swathFt: 2.5, speedMph: 3 }],
      },
    ],
    handMethods: [
      {
        id: 'reel',
        name: 'reel',
        what: 'hose',
        drawsFrom: { kind: 'rig', capacityGal: 100, sumpGal: 3 },
        reachFt: 75,
        minutesPer1000SqFt: 2,
        leastVolumeGal: 5,
      },
      {
        id: 'pack',
        name: 'backpack',
        what: 'backpack',
        drawsFrom: { kind: 'own-tank', capacityGal: 4 },
        minutesPer1000SqFt: 6,
      },
      {
        id: 'lance',
        name: 'lance',
        what: 'hose',
        drawsFrom: { kind: 'machine', machineId: 'heron', compartmentId: 't' },
        reachFt: 40,
        minutesPer1000SqFt: 3,
      },
      {
        id: 'crank',
        name: 'hand spreader',
        what: 'hand-spreader',
        drawsFrom: { kind: 'own-hopper', capacityLb: 15 },
        minutesPer1000SqFt: 4,
      },
    ],
    rigs: [
      {
        id: 'ash',
        name: 'Ash',
        homeId: 'shop',
        shiftStartMin: 420,
        shiftMin: 540,
        machines: [
          { machineId: 'heron', ride: 'rack' },
          { machineId: 'plug', ride: 'trailer' },
        ],
        handMethodIds: ['reel', 'pack', 'lance', 'crank'],
        payloadLb: 4000,
      },
      {
        id: 'bay',
        name: 'Bay',
        homeId: 'shop',
        shiftStartMin: 420,
        shiftMin: 540,
        machines: [],
        handMethodIds: ['lance'],
        payloadLb: 2000,
      },
    ],
    fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-83.01, 40], waterGpm: 20 }],
    products: [
      { id: 'liquid', name: 'Liquid', form: 'liquid', unit: 'fl-oz', label: {} },
      {
        id: 'feed',
        name: 'Feed',
        form: 'granular',
        unit: 'lb',
        bagLb: 50,
        analysis: { nitrogen: 0.2, phosphate: 0.05, potash: 0 },
        label: {},
      },
      { id: 'fescue', name: 'Fescue', form: 'seed', unit: 'lb', bagLb: 50, label: {} },
      { id: 'powder', name: 'Powder', form: 'dry', unit: 'oz', label: {} },
    ],
    mixes: [
      {
        id: 'mix',
        name: 'Mix',
        carrierGalPer1000SqFt: 0.5,
        parts: [
          { productId: 'liquid', amountPer1000SqFt: 0.4 },
          { productId: 'powder', amountPer1000SqFt: 0.2 },
        ],
      },
    ],
    treatments: [
      { id: 'spray', name: 'Spray', kind: 'spray', mixId: 'mix' },
      {
        id: 'feed',
        name: 'Feed',
        kind: 'spread',
        productId: 'feed',
        rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: 0.9 },
      },
      { id: 'cores', name: 'Cores', kind: 'aerate', passes: 2 },
      {
        id: 'sow',
        name: 'Sow',
        kind: 'seed',
        productId: 'fescue',
        lbPer1000SqFt: 6,
        passes: 2,
        starter: { productId: 'feed', rate: { kind: 'product', lbPer1000SqFt: 3 }, passes: 1 },
      },
    ],
    rounds: [],
  });
}

/** Finds a record by id; a missing one is a mistake of the test. */
export function byId<T extends { readonly id: string }>(records: readonly T[], id: string): T {
  const found = records.find((each) => each.id === id);
  if (!found) throw new Error(`the sample has no ${id}`);
  return found;
}

export function measured(zone: Zone, areaSqFt: number | null = 5000, plannable = true): ZoneMeasure {
  const area = areaSqFt === null ? null : quantity<'ft2'>(areaSqFt);
  return {
    zoneId: zone.id,
    name: zone.name,
    source: 'stated',
    planAreaSqFt: area,
    areaSqFt: area,
    errorSqFt: null,
    slopeDeg: zone.slopeDeg,
    plannable,
  };
}

export type Change = {
  readonly zone?: Partial<Zone>;
  readonly property?: Partial<Property>;
  readonly rig?: Rig | null;
  readonly wetGround?: boolean;
  readonly farthestFt?: number | null;
  readonly zoneMeasure?: ZoneMeasure;
  readonly book?: Book;
  readonly treatment?: Treatment;
};

export const BOOM: Method = { kind: 'machine', machineId: 'heron', headId: 'boom' };
export const TINES: Method = { kind: 'machine', machineId: 'plug', headId: 'tines' };
export const hand = (handMethodId: string): Method => ({ kind: 'hand', handMethodId });

/** The front lawn, treated by a method of rig Ash, with changes. */
export function ask(method: Method, treatmentId: string, change: Change = {}): ReachQuestion {
  const book = change.book ?? sampleBook();
  const plain = byId(book.properties, 'elm');
  const zone = { ...byId(plain.zones, 'front'), ...change.zone };
  return {
    book,
    property: { ...plain, ...change.property },
    zone,
    zoneMeasure: change.zoneMeasure ?? measured(zone),
    farthestFt: change.farthestFt === undefined ? 60 : change.farthestFt,
    treatment: change.treatment ?? byId(book.treatments, treatmentId),
    method,
    rig: change.rig === undefined ? byId(book.rigs, 'ash') : change.rig,
    wetGround: change.wetGround ?? false,
  };
}
