import type { PlanDay } from '../../core/plan/result/index.ts';

/** Seconds after midnight of a time like "7:20". */
export function at(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 3600 + minutes * 60;
}

const op = { propertyId: 'p1', zoneId: 'z', treatmentId: 't', step: 0 };
const method = { kind: 'machine', machineId: 'm', headId: 'h' } as const;

/**
 * A day of two stops made up for these tests: 7:00 load, 7:30 off, stop 1 8:00 to 9:00 with a refill from the rig at 8:30,
 * break 9:00 to 9:30 on the way, stop 2 10:00 to 11:00, home 11:30, done 11:45. The tank holds 20 gal.
 */
export const SMALL_DAY: PlanDay = {
  date: '2027-03-16',
  rigId: 'r',
  rigName: 'Rig One',
  startSec: at('7:00'),
  endSec: at('11:45'),
  paidSec: at('11:45') - at('7:00'),
  overtimeSec: 0,
  driveSec: 5400,
  treatSec: 6000,
  refillSec: 600,
  distanceM: 16_093,
  treatedSqFt: 60_000,
  coveredSqFt: 60_000,
  handTrimSqFt: 0,
  notReachedSqFt: 0,
  costUsd: 150,
  stops: [stop(1, 'p1', 'First Lawn', '8:00', '9:00'), stop(2, 'p2', 'Second Lawn', '10:00', '11:00')],
  loads: [],
  levels: [
    {
      id: 'm/tank',
      label: 'Machine, tank',
      kind: 'tank',
      unit: 'gal',
      capacity: 20,
      points: [
        [at('7:00'), 20],
        [at('8:00'), 20],
        [at('8:30'), 0],
        [at('8:40'), 20],
        [at('9:00'), 10],
        [at('11:45'), 10],
      ],
    },
    {
      id: 'water',
      label: 'Nurse tank',
      kind: 'nurse',
      unit: 'gal',
      capacity: 100,
      points: [
        [at('7:00'), 50],
        [at('8:30'), 50],
        [at('8:40'), 30],
        [at('11:45'), 30],
      ],
    },
  ],
  activities: [
    { kind: 'morning', startSec: at('7:00'), endSec: at('7:30'), fills: [], stock: [] },
    drive('shop', 'p1', '7:30', '8:00'),
    treat(op, '8:00', '8:30', 0, 40_000),
    {
      kind: 'refill',
      startSec: at('8:30'),
      endSec: at('8:40'),
      ...op,
      fillPointId: '',
      afterSqFt: 40_000,
      rinsedCompartmentIds: [],
      rinseGal: 0,
      fills: [{ compartmentId: 'm/tank', materialId: 'x', volumeGal: 20, weightLb: 0, products: [] }],
      stock: [],
      reasonCode: 'runs-dry',
      reason: 'The tank runs dry.',
    },
    treat(op, '8:40', '9:00', 40_000, 20_000),
    { kind: 'break', startSec: at('9:00'), endSec: at('9:30') },
    drive('p1', 'p2', '9:30', '10:00'),
    treat({ ...op, propertyId: 'p2' }, '10:00', '11:00', 0, 10_000),
    drive('p2', 'shop', '11:00', '11:30'),
    { kind: 'evening', startSec: at('11:30'), endSec: at('11:45') },
  ],
  carry: [],
  carryWeightLb: 900,
  payloadLb: 3000,
  leftOver: [],
  whatIf: [],
};

function stop(number: number, propertyId: string, name: string, arrive: string, leave: string) {
  return {
    number,
    propertyId,
    name,
    arriveSec: at(arrive),
    leaveSec: at(leave),
    driveSec: 1800,
    distanceM: 5000,
    tasks: [],
    otherWays: [],
  };
}

function drive(fromPlaceId: string, toPlaceId: string, start: string, end: string) {
  return { kind: 'drive' as const, startSec: at(start), endSec: at(end), fromPlaceId, toPlaceId, distanceM: 5000 };
}

function treat(where: typeof op, start: string, end: string, doneSqFt: number, areaSqFt: number) {
  return {
    kind: 'treat' as const,
    person: 1 as const,
    startSec: at(start),
    endSec: at(end),
    ...where,
    method,
    doneSqFt,
    areaSqFt,
    draws: [],
  };
}
