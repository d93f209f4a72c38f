import { type Book, readBookValue, type Visit } from '../../../core/book/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { draftRecord, type RecordSubject } from '../../../core/records/index.ts';
import { BLANK_DAY } from '../../support/blank-day.ts';

/** Invented, not for use. A mix of two products on two zones, 8,000 ft2 in all, with everything entered that a record asks for. */
const VALUE = {
  format: 'swardway-book',
  version: 1,
  id: 'records',
  name: 'Records (invented)',
  invented: true,
  firm: {
    name: 'Invented Lawns',
    address: '9 Shop Road',
    phone: '555-0100',
    licence: 'B-7',
    siteUse: 'residential lawn',
  },
  properties: [
    {
      id: 'birch',
      name: 'Birch house',
      address: '1 Birch Lane, Fairview',
      parking: [-89.4, 40],
      customer: { name: 'A. Birch', phone: '555-0101' },
      zones: [
        { id: 'front', name: 'front', shape: { kind: 'stated', areaSqFt: 5000 } },
        { id: 'back', name: 'back', shape: { kind: 'stated', areaSqFt: 3000 } },
      ],
    },
  ],
  machines: [
    {
      id: 'rider',
      name: 'Rider',
      what: 'ride-on',
      transitWidthIn: 35,
      emptyWeightLb: 700,
      maxSlopeDeg: 15,
      compartments: [{ kind: 'tank', id: 'tank', name: 'tank', capacityGal: 20 }],
      heads: [{ id: 'boom', name: 'boom', purpose: 'spray', swathFt: 8, speedMph: 4, compartmentIds: ['tank'] }],
    },
  ],
  rigs: [
    {
      id: 'north',
      name: 'Rig North',
      homeId: 'shop',
      shiftStartMin: 420,
      shiftMin: 480,
      machines: [{ machineId: 'rider', ride: 'trailer' }],
      payloadLb: 1500,
    },
  ],
  fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-89.4, 40] }],
  products: [
    {
      id: 'early',
      name: 'Early 4',
      form: 'liquid',
      unit: 'fl-oz',
      maker: 'Invented Works',
      type: 'herbicide',
      pesticide: true,
      actives: [{ name: 'Holdanil', lbPerUnit: 0.02 }],
      label: { registration: '0000-00-A', restrictedUse: true, reentry: 'the spray has dried' },
    },
    {
      id: 'feed',
      name: 'Feed 20',
      form: 'dry',
      unit: 'oz',
      maker: 'Invented Works',
      pesticide: false,
      analysis: { nitrogen: 0.2, phosphate: 0, potash: 0.1 },
      label: {},
    },
  ],
  mixes: [
    {
      id: 'mix',
      name: 'Early mix',
      carrierGalPer1000SqFt: 2,
      parts: [
        { productId: 'early', amountPer1000SqFt: 0.5 },
        { productId: 'feed', amountPer1000SqFt: 1.5 },
      ],
    },
  ],
  treatments: [{ id: 'spray', name: 'Spring spray', kind: 'spray', mixId: 'mix', target: 'crabgrass' }],
  rounds: [{ id: 'spring', name: 'Spring', treatmentIds: ['spray'], dates: ['2027-03-16'], rigIds: ['north'] }],
  applicators: [{ id: 'kim', name: 'Kim Example', licence: 'C-1234', certified: true, rigIds: ['north'] }],
};

export const SUBJECT: RecordSubject = { propertyId: 'birch', on: '2027-03-16', roundId: 'spring', rigId: 'north' };

const task = (zoneId: string, treatedSqFt: number, expectedGal: number, usedGal: number) => ({
  zoneId,
  treatmentId: 'spray',
  step: 0,
  treatedSqFt,
  expectedGal,
  usedGal,
});

/** 16 gal planned, 17 used: 4.25 fl oz and 12.75 oz at 0.25 fl oz and 0.75 oz in a gallon. */
export const DONE: Visit = {
  id: 'visit-1',
  ...SUBJECT,
  outcome: { kind: 'done', tasks: [task('front', 5000, 10, 10.5), task('back', 3000, 6, 6.5)] },
  arriveMin: 550,
  leaveMin: 578,
  conditions: { windMph: 5, windFromDeg: 315, airF: 58, sky: 'clear' },
  note: '',
};

export function recordBook(visits: readonly Visit[] = [DONE]): Book {
  const read = readBookValue({ ...VALUE, visits }, 'records');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}

/** The day of the plan with this one stop. */
export function recordDay(): PlanDay {
  const planned = (zoneId: string, areaSqFt: number, volumeGal: number) => ({
    propertyId: 'birch',
    zoneId,
    treatmentId: 'spray',
    step: 0,
    method: { kind: 'machine' as const, machineId: 'rider', headId: 'boom' },
    person: 1 as const,
    startSec: 33_000,
    endSec: 34_000,
    areaSqFt,
    volumeGal,
    weightLb: 0,
    loadNumbers: [1],
    why: '',
  });
  const stop = {
    number: 1,
    propertyId: 'birch',
    name: 'Birch house',
    arriveSec: 32_400,
    leaveSec: 34_200,
    driveSec: 600,
    distanceM: 5000,
    tasks: [planned('front', 5000, 10), planned('back', 3000, 6)],
    otherWays: [],
  };
  return { ...BLANK_DAY, rigId: 'north', rigName: 'Rig North', stops: [stop] };
}

/** The draft of the visit; fails where there is none. */
export function draftOf(book: Book, day: PlanDay | null = recordDay()) {
  const draft = draftRecord(book, SUBJECT, day);
  if (draft === null) throw new Error('no draft');
  return draft;
}
