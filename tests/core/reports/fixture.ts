import * as v from 'valibot';
import { type Book, bookSchema, type Property } from '../../../core/book/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import type { Plan, PlanTask } from '../../../core/plan/result/index.ts';
import { type DayInput, type PropertyInput, SHEETS, type Sheet, type SheetKind } from '../../../core/reports/index.ts';
import { type SeasonLedger, seasonLedger } from '../../../core/round/ledger/index.ts';
import { smallPlan } from '../plan/judge/small-plan.ts';

const square = (west: number, south: number, side: number) => ({
  type: 'Polygon' as const,
  coordinates: [
    [
      [west, south],
      [west + side, south],
      [west + side, south + side],
      [west, south + side],
      [west, south],
    ],
  ],
});

/** The book behind the hand-made plan of the judge's tests. Invented, not for use; `names` puts any text into its names. */
export function fixtureBook(names: (text: string) => string = (text) => text): Book {
  const zone = (id: string, west: number, gateIds: readonly string[] = []) => ({
    id,
    name: names(id),
    shape: { kind: 'drawn', geometry: square(west, 40, 0.0003) },
    gateIds,
  });
  const property = (id: string, west: number, zones: readonly unknown[], more: object = {}) => ({
    id,
    name: names(`${id} house`),
    address: names(`1 ${id} Lane`),
    parking: [west, 40],
    zones,
    ...more,
  });
  return v.parse(bookSchema, {
    format: 'swardway-book',
    version: 1,
    id: 'invented',
    name: names('Invented company'),
    invented: true,
    properties: [
      property('acre', -89.41, [zone('back', -89.41, ['side']), zone('front', -89.409)], {
        gates: [{ id: 'side', name: names('side gate'), clearWidthIn: 36, at: [-89.41, 40.0001], locked: true }],
        cautions: ['pets'],
        note: names('Bell is broken'),
        exclusions: [{ id: 'pond', name: names('pond'), what: 'water', geometry: square(-89.4099, 40.0001, 0.00005) }],
      }),
      property('birch', -89.42, [zone('lawn', -89.42)], { noTrailer: true }),
      property('cedar', -89.43, [
        zone('lawn', -89.43),
        { id: 'bank', name: names('bank'), shape: { kind: 'stated', areaSqFt: 500, method: 'old card' } },
      ]),
    ],
    machines: [
      {
        id: 'rider',
        name: names('Rider'),
        what: 'ride-on',
        transitWidthIn: 35,
        emptyWeightLb: 700,
        maxSlopeDeg: 15,
        compartments: [
          { kind: 'tank', id: 'tank', name: names('tank'), capacityGal: 20 },
          { kind: 'hopper', id: 'hopper', name: names('hopper'), capacityLb: 100 },
        ],
        heads: [
          { id: 'boom', name: names('boom'), purpose: 'spray', swathFt: 8, speedMph: 4, compartmentIds: ['tank'] },
          { id: 'seeder', name: names('seeder'), purpose: 'seed', swathFt: 4, speedMph: 3, compartmentIds: ['hopper'] },
        ],
      },
    ],
    rigs: [
      {
        id: 'north',
        name: names('Rig North'),
        homeId: 'shop',
        shiftStartMin: 420,
        shiftMin: 240,
        machines: [{ machineId: 'rider', ride: 'trailer' }],
        payloadLb: 1500,
      },
    ],
    fillPoints: [
      { id: 'shop', name: names('Shop'), what: 'shop', at: [-89.4, 40] },
      { id: 'hydrant', name: names('Mill hydrant'), what: 'hydrant', at: [-89.41, 40.01] },
    ],
    products: [
      { id: 'wet', name: names('Wet product'), form: 'liquid', unit: 'fl-oz', label: { needsAgitation: true } },
      { id: 'powder', name: names('Powder product'), form: 'dry', unit: 'oz', label: {} },
      { id: 'grass', name: names('Grass seed'), form: 'seed', unit: 'lb', bagLb: 15, label: {} },
    ],
    mixes: [
      {
        id: 'mix-one',
        name: names('Mix one'),
        carrierGalPer1000SqFt: 0.3,
        parts: [
          { productId: 'wet', amountPer1000SqFt: 1.2 },
          { productId: 'powder', amountPer1000SqFt: 0.5 },
        ],
      },
      { id: 'mix-two', name: names('Mix two'), carrierGalPer1000SqFt: 0.3, parts: [] },
    ],
    treatments: [
      { id: 'seed', name: names('Overseed'), kind: 'seed', productId: 'grass', lbPer1000SqFt: 10 },
      { id: 'spray', name: names('Spray one'), kind: 'spray', mixId: 'mix-one' },
      { id: 'spray-two', name: names('Spray two'), kind: 'spray', mixId: 'mix-two' },
    ],
    rounds: [],
    fleets: [
      { id: 'now', name: names('As it is'), rigIds: ['north'] },
      { id: 'more', name: names('With a second rig'), rigIds: ['north'], fixedPerSeason: 900 },
    ],
    firm: { name: names('Invented Lawns'), phone: '555-0100' },
    templates: [
      { id: 'letter', name: names('Letter'), what: 'notice', text: names('To {customer} at {address}: {colour}') },
      { id: 'sign', name: names('Sign'), what: 'posting', text: names('Keep off until {reentry}') },
    ],
    applicationRecords: [keptRecord(names)],
  }) as Book;
}

/** One record as it is kept. */
function keptRecord(names: (text: string) => string): object {
  return {
    id: 'record-1 v1',
    recordId: 'record-1',
    version: 1,
    on: '2027-03-15',
    propertyId: 'acre',
    roundId: 'spring',
    rigId: 'north',
    writtenAt: '2027-03-15T17:00',
    writtenBy: names('Kim Example'),
    elements: [
      { id: 'date', text: '2027-03-15' },
      { id: 'customer', text: names('A. Acre') },
      { id: 'time', text: '8:00 am to 8:30 am', from: 'planned' },
      { id: 'sky', text: '', from: 'missing' },
    ],
    products: [],
    fingerprint: '',
  };
}

function task(propertyId: string, zoneId: string, treatmentId: string, loadNumbers: readonly number[]): PlanTask {
  const headId = treatmentId === 'seed' ? 'seeder' : 'boom';
  return {
    propertyId,
    zoneId,
    treatmentId,
    step: 0,
    method: { kind: 'machine', machineId: 'rider', headId },
    person: 1,
    startSec: 0,
    endSec: 0,
    areaSqFt: 0,
    volumeGal: 0,
    weightLb: 0,
    loadNumbers,
    why: '',
  };
}

/** The judge's hand-made plan with what sheets show beside it: tasks, products, ground of the loads, what is carried. */
export function fixturePlan(): Plan {
  const plan = smallPlan();
  const day = plan.days[0]!;
  const tasks = [
    [task('acre', 'back', 'seed', [2]), task('acre', 'front', 'spray', [1])],
    [task('birch', 'lawn', 'spray', [1, 3, 4])],
    [task('cedar', 'lawn', 'spray-two', [5])],
  ];
  const stops = day.stops.map((stop, index) => ({ ...stop, tasks: tasks[index] ?? [] }));
  const cover = (propertyId: string, zoneId: string, treatmentId: string, fromSqFt: number, areaSqFt: number) => ({
    propertyId,
    zoneId,
    treatmentId,
    fromSqFt,
    areaSqFt,
  });
  const covers = [
    [cover('acre', 'front', 'spray', 0, 6000), cover('birch', 'lawn', 'spray', 0, 666)],
    [cover('acre', 'back', 'seed', 0, 4000)],
    [cover('birch', 'lawn', 'spray', 666, 6667)],
    [cover('birch', 'lawn', 'spray', 7333, 1667)],
    [cover('cedar', 'lawn', 'spray-two', 0, 2000)],
  ];
  const loads = day.loads.map((load, index) => ({
    ...load,
    covers: covers[index] ?? [],
    atPropertyId: load.number === 3 ? 'birch' : '',
    products:
      load.materialId === 'mix-one'
        ? [
            // 1.2 fl oz and 0.5 oz for every 0.3 gal.
            { productId: 'wet', amount: load.volumeGal * 4, unit: 'fl-oz' as const },
            { productId: 'powder', amount: (load.volumeGal * 5) / 3, unit: 'oz' as const },
          ]
        : load.materialId === 'grass'
          ? [{ productId: 'grass', amount: 40, unit: 'lb' as const }]
          : [],
  }));
  const carry = [
    {
      what: 'machine' as const,
      id: 'rider',
      label: 'Rider, on the trailer',
      amount: 1,
      unit: 'machine',
      weightLb: 700,
    },
    { what: 'water' as const, id: 'water', label: 'Water in the nurse tank', amount: 30, unit: 'gal', weightLb: 250.2 },
  ];
  return { ...plan, days: [{ ...day, stops, loads, carry, carryWeightLb: 950.2, payloadLb: 1500 }] };
}

export function dayInput(book: Book = fixtureBook(), plan: Plan = fixturePlan()): DayInput {
  return { scope: 'day', book, plan, day: plan.days[0]! };
}

export function propertyInput(propertyId: string, book: Book = fixtureBook()): PropertyInput {
  const property = book.properties.find((each) => each.id === propertyId)!;
  return { scope: 'property', book, property, measure: measureProperty(property) };
}

const ROUND: Book['rounds'][number] = {
  id: 'spring',
  name: 'Spring round',
  treatmentIds: ['spray', 'seed', 'spray-two'],
  propertyIds: 'all',
  skipped: [],
  dates: ['2027-03-15'],
  rigIds: ['north'],
  wetGround: false,
};

/** The season's ledger of 2027 on measured ground. */
export function ledgerOf(book: Book): SeasonLedger {
  const areaSqFt = (property: Property, zoneId: string): number | null =>
    measureProperty(property).zones.find((each) => each.zoneId === zoneId)?.areaSqFt ?? null;
  return seasonLedger(book, '2027', { ground: { areaSqFt, bandSqFt: () => 0 } });
}

/** A sheet of any kind from the fixture's book and plan. */
export function sheetOf(kind: SheetKind, book: Book = fixtureBook(), plan: Plan = fixturePlan()): Sheet {
  switch (kind.scope) {
    case 'day':
      return kind.make(dayInput(book, plan));
    case 'property':
      return kind.make(propertyInput('acre', book));
    case 'round':
      return kind.make({
        scope: 'round',
        book,
        round: ROUND,
        plan,
        fleetPlans: book.fleets.map((fleet) => ({ fleetId: fleet.id, plan })),
      });
    case 'year':
      return kind.make({ scope: 'year', book, ledger: ledgerOf(book) });
    case 'book':
      return kind.make({ scope: 'book', book });
  }
}

/** One sheet of every kind. */
export function everySheet(book: Book = fixtureBook()): readonly Sheet[] {
  return SHEETS.map((kind) => sheetOf(kind, book));
}
