import { createRandom } from '../../core/base/index.ts';
import { type Book, type Exclusion, emptyBook, type Property } from '../../core/book/index.ts';
import { boxPolygon, type Frame, place, toPosition } from './ground.ts';
import { type LotKindName, type LotPlan, type Street, streetLots } from './lots.ts';
import {
  FIRM,
  FORECROP,
  fillPoint,
  GREENMEAL,
  PRICES,
  PUSH_SPREADER,
  REEL_200,
  RIDE_ON_49,
  rig,
  SPRING_MIX,
  STAND_ON_35,
  TEMPLATES,
} from './shed.ts';

const NOTE = 'Invented place, people, products and rates. For trying the program out; not for use.';
const TRAVEL: Book['travel'] = {
  circuity: 1.4,
  speeds: [
    { upToMiles: 2, mph: 22 },
    { upToMiles: 5, mph: 28 },
    { upToMiles: null, mph: 34 },
  ],
};

/** What all invented books have in common, and what is given. */
export function book(
  given: Pick<
    Book,
    'id' | 'name' | 'properties' | 'machines' | 'handMethods' | 'rigs' | 'fillPoints' | 'treatments' | 'rounds'
  > &
    Partial<Book>,
): Book {
  return {
    ...emptyBook(given.id, given.name),
    note: NOTE,
    invented: true,
    prices: PRICES,
    travel: TRAVEL,
    products: [FORECROP, GREENMEAL],
    mixes: [SPRING_MIX],
    firm: FIRM,
    templates: TEMPLATES,
    applicators: [applicatorOf(given.rigs)],
    ...given,
    properties: given.properties.map((each) => ({
      ...each,
      customer: { name: `Customer of ${each.name}${/invented/i.test(each.name) ? '' : ' (invented)'}` },
    })),
  };
}

function applicatorOf(rigs: Book['rigs']): Book['applicators'][number] {
  const rigIds = rigs.map((each) => each.id);
  return { id: 'kim', name: 'Kim Example (invented)', licence: 'invented 002', certified: true, rigIds, note: '' };
}

export const SPRAY: Book['treatments'][number] = {
  id: 'pre-emergent',
  name: 'Pre-emergent, sprayed',
  kind: 'spray',
  mixId: 'spring-mix',
  target: 'crabgrass',
  coverage: { kind: 'whole' },
  flagFirst: [],
  flagMin: 0,
};

const FEED: Book['treatments'][number] = {
  id: 'spring-feed',
  name: 'Spring feed, spread',
  kind: 'spread',
  productId: 'greenmeal',
  target: 'growth in spring',
  rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: 0.7 },
  coverage: { kind: 'whole' },
  flagFirst: [],
  flagMin: 0,
};

const SHOP_AT = [-2350, -900] as const;

/** One rig, 28 lawns, one day. */
export function residentialDay(): Book {
  const streets: readonly Street[] = [
    {
      name: 'Teasel Lane',
      from: [-235, 130],
      headingDeg: 5,
      right: ['narrow', 'narrow', 'middle', 'middle'],
      left: ['narrow', 'middle', 'narrow', 'middle'],
    },
    {
      name: 'Wagtail Court',
      from: [-205, -60],
      headingDeg: -16,
      right: ['middle', 'middle', 'wide'],
      left: ['middle', 'wide', 'middle'],
    },
    {
      name: 'Kiln Street',
      from: [-75, 148],
      headingDeg: -9,
      right: ['narrow', 'middle', 'narrow', 'wide'],
      left: ['middle', 'narrow', 'middle', 'narrow'],
    },
    {
      name: 'Orchard Rise',
      from: [-55, -88],
      headingDeg: 21,
      right: ['wide', 'wide', 'middle'],
      left: ['wide', 'middle', 'wide'],
    },
  ];
  const special: Readonly<Record<string, Partial<LotPlan>>> = {
    '2 Teasel Lane': { gateIn: 36, note: 'Tight: the side gate has 1 in to spare.' },
    '3 Teasel Lane': { gateIn: 36, inBack: 'play', cautions: ['children'] },
    '6 Teasel Lane': { gateIn: 30, note: 'The side gate takes no machine: the back is done from the hose.' },
    '4 Wagtail Court': {
      backSlopeDeg: 19,
      cautions: ['steep'],
      note: 'The bank behind the house is too steep to ride.',
    },
    '1 Wagtail Court': { inBack: 'garden', keepAwayFt: 6, cautions: ['neighbour-garden'] },
    '3 Kiln Street': { locked: true, gateIn: 42 },
    '8 Kiln Street': { inBack: 'water', keepAwayFt: 6, cautions: ['water'] },
    '5 Kiln Street': { cautions: ['pets'] },
    '2 Orchard Rise': { backSlopeDeg: 9, frontSlopeDeg: 6 },
    '5 Orchard Rise': {
      hours: { openMin: 780, closeMin: 960 },
      note: 'Works nights: not before one in the afternoon.',
    },
  };
  return book({
    id: 'sample-residential-day',
    name: 'Bramley Fold, one rig (invented)',
    properties: streets.flatMap((street) => streetLots(street, special)),
    machines: [STAND_ON_35],
    handMethods: [REEL_200, PUSH_SPREADER],
    rigs: [
      rig({
        id: 'rig-north',
        name: 'Rig North',
        machines: [{ machineId: 'stand-on-35', ride: 'rack', unloadMin: 1, loadMin: 1 }],
        handMethodIds: ['reel-200', 'push-spreader'],
        // A long day: with the edges gone round twice, and what is left trimmed by hand, nine hours do not do.
        shiftMin: 600,
        nurseTankGal: 65,
        payloadLb: 3000,
      }),
    ],
    fillPoints: [
      fillPoint({ id: 'shop', name: 'Shop on Quarry Road', what: 'shop' }, SHOP_AT),
      fillPoint(
        { id: 'hydrant-mill', name: 'Hydrant at Mill Green', what: 'hydrant', waterGpm: 60, products: [], visitMin: 6 },
        [150, 265],
      ),
    ],
    treatments: [SPRAY],
    rounds: [
      {
        id: 'spring',
        name: 'Spring pre-emergent',
        treatmentIds: ['pre-emergent'],
        propertyIds: 'all',
        skipped: [],
        dates: ['2027-03-16'],
        dueDate: '2027-03-20',
        rigIds: ['rig-north'],
        wetGround: false,
      },
    ],
  });
}

/** A place that is one large rectangle with things on it; figures in metres. */
function openGround(
  given: Pick<Property, 'id' | 'name'> & Partial<Property>,
  frame: Frame,
  size: readonly [number, number],
  things: readonly {
    readonly id: string;
    readonly what: Exclusion['what'];
    readonly box: readonly [number, number, number, number];
    readonly keepAwayFt?: number;
  }[],
): Property {
  return {
    address: `${given.name}, Bramley Fold (invented)`,
    parking: toPosition(place(frame, [size[0] / 2, -4])),
    noTrailer: false,
    gates: [
      {
        id: 'main',
        name: 'main gate',
        clearWidthIn: 120,
        at: toPosition(place(frame, [size[0] / 2, 0])),
        locked: false,
      },
    ],
    zones: [
      {
        id: 'ground',
        name: 'ground',
        shape: { kind: 'drawn', geometry: boxPolygon(frame, [0, 0, ...size]) },
        slopeDeg: 0,
        gateIds: ['main'],
      },
    ],
    exclusions: things.map((each) => ({
      id: each.id,
      name: each.id,
      what: each.what,
      geometry: boxPolygon(frame, each.box),
      keepAwayFt: each.keepAwayFt ?? 0,
    })),
    cautions: [],
    note: '',
    ...given,
  };
}

/** Two rigs, a hall, a sports ground and fourteen lawns; granular and sprayed. */
export function mixedDay(): Book {
  const streets: readonly Street[] = [
    {
      name: 'Saddler Street',
      from: [-210, 150],
      headingDeg: 3,
      right: ['middle', 'narrow', 'middle', 'narrow'],
      left: ['narrow', 'middle', 'wide'],
    },
    {
      name: 'Heron Way',
      from: [205, -150],
      headingDeg: 84,
      right: ['wide', 'middle', 'wide'],
      left: ['middle', 'wide', 'middle', 'middle'],
    },
  ];
  const special: Readonly<Record<string, Partial<LotPlan>>> = {
    '2 Saddler Street': { gateIn: 36 },
    '4 Saddler Street': { gateIn: 42, cautions: ['pets'] },
    '3 Heron Way': { gateIn: 60, noTrailer: true, note: 'Narrow close: no room to turn a trailer.' },
    '4 Heron Way': { backSlopeDeg: 13, gateIn: 54, cautions: ['steep'] },
    '6 Heron Way': { gateIn: 54, inBack: 'play', cautions: ['children'] },
  };
  const sports = openGround(
    {
      id: 'sports-ground',
      name: 'Fold Meadow sports ground',
      cautions: ['children', 'traffic'],
      hours: { openMin: 420, closeMin: 840 },
      note: 'Clear of players by three in the afternoon.',
    },
    { at: [-120, -135], headingDeg: -4 },
    [210, 130],
    [
      { id: 'pavilion', what: 'building', box: [10, 8, 34, 20] },
      { id: 'car park', what: 'paving', box: [40, 4, 100, 24] },
      { id: 'play corner', what: 'play', box: [180, 6, 204, 26], keepAwayFt: 10 },
    ],
  );
  const hall = openGround(
    { id: 'weavers-hall', name: 'Weavers Hall', cautions: ['traffic'] },
    { at: [20, 130], headingDeg: 12 },
    [90, 60],
    [
      { id: 'hall', what: 'building', box: [26, 22, 62, 44] },
      { id: 'forecourt', what: 'paving', box: [36, 0, 52, 22] },
      { id: 'rose bed', what: 'bed', box: [64, 24, 70, 40] },
    ],
  );
  return book({
    id: 'sample-mixed-day',
    name: 'Bramley Fold, two rigs (invented)',
    properties: [sports, hall, ...streets.flatMap((street) => streetLots(street, special))],
    machines: [STAND_ON_35, RIDE_ON_49],
    handMethods: [REEL_200, PUSH_SPREADER],
    rigs: [
      rig({
        id: 'rig-north',
        name: 'Rig North',
        machines: [{ machineId: 'stand-on-35', ride: 'rack', unloadMin: 1, loadMin: 1 }],
        handMethodIds: ['reel-200', 'push-spreader'],
        payloadLb: 3600,
      }),
      rig({
        id: 'rig-south',
        name: 'Rig South',
        machines: [{ machineId: 'ride-on-49', ride: 'trailer', unloadMin: 2, loadMin: 3 }],
        handMethodIds: [],
        nurseTankGal: 150,
        bagPlaces: 30,
        payloadLb: 5200,
      }),
    ],
    fillPoints: [
      fillPoint({ id: 'shop', name: 'Shop on Quarry Road', what: 'shop' }, SHOP_AT),
      fillPoint(
        {
          id: 'hydrant-meadow',
          name: 'Hydrant at Fold Meadow',
          what: 'hydrant',
          waterGpm: 60,
          products: [],
          visitMin: 6,
          hours: { openMin: 420, closeMin: 1020 },
        },
        [110, -165],
      ),
      fillPoint(
        {
          id: 'supplier',
          name: 'Seed and feed store',
          what: 'supplier',
          waterGpm: 0,
          products: ['greenmeal'],
          visitMin: 12,
          hours: { openMin: 480, closeMin: 1020 },
        },
        [1500, 300],
      ),
    ],
    treatments: [FEED, SPRAY],
    rounds: [
      {
        id: 'feed-and-guard',
        name: 'Feed and pre-emergent',
        treatmentIds: ['spring-feed', 'pre-emergent'],
        propertyIds: 'all',
        skipped: [],
        dates: ['2027-03-24'],
        rigIds: ['rig-north', 'rig-south'],
        wetGround: false,
      },
    ],
  });
}

const ROUND_STREETS = [
  'Alder Close',
  'Barley Street',
  'Cobbler Lane',
  'Dyer Street',
  'Ferry Lane',
  'Glover Street',
  'Hatter Row',
  'Juniper Way',
  'Lantern Street',
  'Mason Lane',
  'Potter Street',
  'Quince Close',
] as const;
const ROUND_SEED = 20270316;

/** One rig, four days, 126 lawns; the kinds of lots, gates and slopes are drawn from a seeded generator. */
export function fourDayRound(): Book {
  const random = createRandom(ROUND_SEED);
  const kinds: readonly LotKindName[] = ['narrow', 'narrow', 'middle', 'middle', 'middle', 'wide'];
  const pick = <T>(from: readonly T[]): T => from[random.below(from.length)] as T;
  const streets = ROUND_STREETS.map((name, index): Street => {
    const column = index % 4;
    const row = Math.floor(index / 4);
    const many = index < 6 ? 11 : 10;
    const draw = (count: number): LotKindName[] => Array.from({ length: count }, () => pick(kinds));
    return {
      name,
      from: [-430 + column * 222, -1150 + row * 1150 + (column % 2) * 24],
      headingDeg: -5 + random.below(11),
      right: draw(Math.ceil(many / 2)),
      left: draw(Math.floor(many / 2)),
    };
  });
  const lots = streets.flatMap((street) => {
    const special: Record<string, Partial<LotPlan>> = {};
    for (let number = 1; number <= 12; number += 1) special[`${number} ${street.name}`] = oddLot(random.below(20));
    return streetLots(street, special);
  });
  return book({
    id: 'sample-four-day-round',
    name: 'Bramley Fold, four days (invented)',
    properties: lots,
    machines: [STAND_ON_35],
    handMethods: [REEL_200, PUSH_SPREADER],
    rigs: [
      rig({
        id: 'rig-north',
        name: 'Rig North',
        machines: [{ machineId: 'stand-on-35', ride: 'rack', unloadMin: 1, loadMin: 1 }],
        handMethodIds: ['reel-200'],
        shiftMin: 600,
        overtimeMin: 45,
        nurseTankGal: 150,
        payloadLb: 4000,
      }),
    ],
    fillPoints: [
      fillPoint({ id: 'shop', name: 'Shop on Quarry Road', what: 'shop' }, SHOP_AT),
      fillPoint(
        { id: 'hydrant-mill', name: 'Hydrant at Mill Green', what: 'hydrant', waterGpm: 60, products: [], visitMin: 6 },
        [150, 265],
      ),
      fillPoint(
        { id: 'hydrant-weir', name: 'Hydrant at the weir', what: 'hydrant', waterGpm: 40, products: [], visitMin: 6 },
        [-700, -120],
      ),
    ],
    treatments: [SPRAY],
    rounds: [
      {
        id: 'spring',
        name: 'Spring pre-emergent',
        treatmentIds: ['pre-emergent'],
        propertyIds: 'all',
        skipped: [{ propertyId: 'alder-close-1', reason: 'newly seeded' }],
        dates: ['2027-03-15', '2027-03-16', '2027-03-17', '2027-03-18'],
        dueDate: '2027-03-18',
        rigIds: ['rig-north'],
        wetGround: false,
      },
    ],
  });
}

/** What is special about a lot, by a throw of a twenty-sided die; most lots are plain. */
function oddLot(throwOf20: number): Partial<LotPlan> {
  switch (throwOf20) {
    case 0:
      return { gateIn: 36 };
    case 1:
      return { gateIn: 30, note: 'Back by hose.' };
    case 2:
      return { backSlopeDeg: 8 };
    case 3:
      return { inBack: 'play', cautions: ['children'] };
    case 4:
      return { inBack: 'garden', keepAwayFt: 6, cautions: ['neighbour-garden'] };
    case 5:
      return { cautions: ['pets'] };
    case 6:
      return { inBack: 'water', keepAwayFt: 6, cautions: ['water'] };
    default:
      return {};
  }
}
