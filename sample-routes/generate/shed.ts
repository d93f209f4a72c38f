import type { Book, FillPoint, HandMethod, HeadPasses, Machine, Mix, Product, Rig } from '../../core/book/index.ts';
import { type Spot, toPosition } from './ground.ts';

/** Machines, products and rates of the samples: all of them made up, none of them for use. */

const NOT_FOR_USE = 'invented, not for use';

/** How a head is driven: 4 in of overlap, passes of 3 ft round the edge, which fit between a drive and a fence, 3 s a turn, 5 mph in between. */
const driven = (trimPasses: number): HeadPasses => ({
  overlapFt: 0.33,
  trimPasses,
  turnSec: 3,
  trimSwathFt: 3,
  transitMph: 5,
  handTrimFromSqFt: 25,
});

export const STAND_ON_35: Machine = {
  id: 'stand-on-35',
  name: 'Stand-on 35',
  what: 'stand-on',
  transitWidthIn: 35,
  emptyWeightLb: 690,
  maxSlopeDeg: 15,
  compartments: [
    { kind: 'tank', id: 'tank', name: 'tank', capacityGal: 18.5, sumpGal: 0.5, agitated: true },
    { kind: 'hopper', id: 'hopper', name: 'hopper', capacityLb: 150 },
  ],
  heads: [
    {
      id: 'boom',
      name: 'boom',
      purpose: 'spray',
      swathFt: 8,
      speedMph: 4,
      fieldEfficiency: 0.6,
      passes: driven(2),
      swapMin: 0,
      compartmentIds: ['tank'],
    },
    {
      id: 'disc',
      name: 'spreader disc',
      purpose: 'spread',
      swathFt: 10,
      speedMph: 4,
      fieldEfficiency: 0.6,
      passes: driven(2),
      swapMin: 0,
      compartmentIds: ['hopper'],
    },
  ],
  bagPlaces: 1,
};

export const RIDE_ON_49: Machine = {
  id: 'ride-on-49',
  name: 'Ride-on 49',
  what: 'ride-on',
  transitWidthIn: 49,
  emptyWeightLb: 980,
  maxSlopeDeg: 12,
  compartments: [
    { kind: 'tank', id: 'left', name: 'left tank', capacityGal: 26.5, sumpGal: 0.5, agitated: true },
    { kind: 'tank', id: 'right', name: 'right tank', capacityGal: 26.5, sumpGal: 0.5, agitated: true },
    { kind: 'hopper', id: 'hopper', name: 'hopper', capacityLb: 220 },
  ],
  heads: [
    {
      id: 'boom',
      name: 'boom',
      purpose: 'spray',
      swathFt: 12,
      speedMph: 5,
      fieldEfficiency: 0.62,
      passes: driven(3),
      swapMin: 0,
      compartmentIds: ['left', 'right'],
    },
    {
      id: 'disc',
      name: 'spreader disc',
      purpose: 'spread',
      swathFt: 14,
      speedMph: 5,
      fieldEfficiency: 0.66,
      passes: driven(3),
      swapMin: 0,
      compartmentIds: ['hopper'],
    },
    {
      id: 'tines',
      name: 'tine head',
      purpose: 'aerate',
      swathFt: 4,
      speedMph: 4,
      fieldEfficiency: 0.6,
      passes: driven(1),
      swapMin: 15,
      compartmentIds: [],
    },
  ],
  bagPlaces: 2,
};

export const REEL_200: HandMethod = {
  id: 'reel-200',
  name: 'Hose reel 200 ft',
  what: 'hose',
  drawsFrom: { kind: 'rig', capacityGal: 50, sumpGal: 1, agitated: true },
  reachFt: 200,
  minutesPer1000SqFt: 3.2,
  setUpMin: 4,
  leastVolumeGal: 2,
  besideMachine: true,
};

export const PUSH_SPREADER: HandMethod = {
  id: 'push-spreader',
  name: 'Hand spreader 40 lb',
  what: 'hand-spreader',
  drawsFrom: { kind: 'own-hopper', capacityLb: 40 },
  minutesPer1000SqFt: 2.4,
  setUpMin: 1,
  leastVolumeGal: 0,
  besideMachine: true,
};

export const FORECROP: Product = {
  id: 'forecrop',
  name: 'Forecrop 3 (invented)',
  form: 'liquid',
  unit: 'fl-oz',
  maker: 'Invented Works',
  type: 'herbicide',
  pesticide: true,
  pricePerUnit: 1.1,
  label: {
    registration: 'none: an invented product',
    restrictedUse: false,
    reentry: 'the spray has dried (invented)',
    mostPerApplication: 0.6,
    mostPerYear: 1.2,
    leastCarrierGalPer1000SqFt: 0.25,
    mostCarrierGalPer1000SqFt: 3,
    mostWindMph: 10,
    needsAgitation: false,
    note: NOT_FOR_USE,
  },
  note: NOT_FOR_USE,
};

export const GREENMEAL: Product = {
  id: 'greenmeal',
  name: 'Greenmeal 20-0-8 (invented)',
  form: 'granular',
  unit: 'lb',
  maker: 'Invented Works',
  type: 'fertilizer',
  pesticide: false,
  bagLb: 50,
  analysis: { nitrogen: 0.2, phosphate: 0, potash: 0.08 },
  pricePerUnit: 0.62,
  label: { registration: 'none: an invented product', mostPerApplication: 5, needsAgitation: false, note: NOT_FOR_USE },
  note: NOT_FOR_USE,
};

export const SPRING_MIX: Mix = {
  id: 'spring-mix',
  name: 'Spring mix (invented)',
  carrierGalPer1000SqFt: 0.5,
  parts: [{ productId: 'forecrop', amountPer1000SqFt: 0.45 }],
  needsAgitation: false,
  rinseMin: 10,
  rinseGal: 5,
};

/** A rig with one person; what differs is given. */
export function rig(given: Pick<Rig, 'id' | 'name' | 'machines' | 'handMethodIds'> & Partial<Rig>): Rig {
  return {
    crew: 1,
    homeId: 'shop',
    shiftStartMin: 420,
    shiftMin: 540,
    overtimeMin: 60,
    breakAfterMin: 720,
    breakMin: 30,
    morningMin: 20,
    eveningMin: 15,
    nurseTankGal: 100,
    nurseFlowGpm: 20,
    bagPlaces: 16,
    minutesPerBag: 1,
    refillMin: 5,
    midZoneMin: 2,
    stopMin: 3,
    payloadLb: 4200,
    ...given,
  };
}

export function fillPoint(given: Pick<FillPoint, 'id' | 'name' | 'what'> & Partial<FillPoint>, at: Spot): FillPoint {
  return { waterGpm: 30, visitMin: 8, minutesPerBag: 0.5, products: 'all', ...given, at: toPosition(at) };
}

export const PRICES: Book['prices'] = {
  wagePerHour: 28,
  overtimeFactor: 1.5,
  perMile: 0.85,
  perDayLate: 6,
  perRigDay: 30,
};

export const FIRM: NonNullable<Book['firm']> = {
  name: 'Bramley Fold Lawns (invented)',
  address: 'Quarry Road, Bramley Fold (invented)',
  phone: '555-0100',
  licence: 'invented 001',
  siteUse: 'residential lawn',
};

/** Texts of the user's own, to be written anew by whoever uses them: no rule asks for these words. */
export const TEMPLATES: Book['templates'] = [
  {
    id: 'notice',
    name: 'Notice to the customer (invented)',
    what: 'notice',
    text: `To {customer}, {address}

On {date} we treat your lawn: {treatments}.
What we use: {products}, on {area}.
Keep people and pets off the grass until {reentry}.

Questions before or after: {firm}, {phone}. Applicator: {applicator}, {certification}.

This text is invented: check your local rules.`,
  },
  {
    id: 'posting',
    name: 'Sign for the lawn (invented)',
    what: 'posting',
    text: `LAWN TREATED
{date}
{types}
Keep off until {reentry}
{firm}, {phone}
This text is invented: check your local rules.`,
  },
];
