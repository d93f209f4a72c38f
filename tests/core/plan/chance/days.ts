import type { Spread } from '../../../../core/book/index.ts';
import type { PlanActivity, PlanDay } from '../../../../core/plan/result/index.ts';
import { BLANK_DAY } from '../../../support/blank-day.ts';

/** No spread at all: every day is as planned. */
export const STILL: Spread = {
  drive: 0,
  setUp: 0,
  treat: 0,
  used: 0,
  driveMean: 1,
  setUpMean: 1,
  treatMean: 1,
  usedMean: 1,
  inCommon: 1,
};

const at = { propertyId: 'p', zoneId: 'z', treatmentId: 't', step: 0 };

export const treat = (startSec: number, endSec: number, volumeGal = 0, person: 1 | 2 = 1): PlanActivity => ({
  kind: 'treat',
  startSec,
  endSec,
  ...at,
  method: { kind: 'machine', machineId: 'm', headId: 'h' },
  person,
  doneSqFt: 0,
  areaSqFt: 1000,
  draws: volumeGal > 0 ? [{ compartmentId: 'm/tank', materialId: 'mix', volumeGal, weightLb: 0 }] : [],
});

/** A day made of these activities, with a stop for each set-up and a load for each fill of the tank. */
export function dayOf(activities: readonly PlanActivity[]): PlanDay {
  let level = 0;
  const loads = activities.flatMap((each) => {
    if (each.kind === 'treat') level -= each.draws.reduce((sum, draw) => sum + draw.volumeGal, 0);
    const fills = each.kind === 'morning' || each.kind === 'refill' ? each.fills : [];
    return fills.map(({ compartmentId, materialId, volumeGal }) => {
      const beforeGal = level;
      level += volumeGal;
      return { compartmentId, materialId, startSec: each.startSec, beforeGal, volumeGal };
    });
  });
  const setUps = activities.filter((each) => each.kind === 'set-up');
  return {
    ...BLANK_DAY,
    startSec: activities[0]?.startSec ?? 0,
    endSec: activities.at(-1)?.endSec ?? 0,
    stops: setUps.map((each, index) => ({
      number: index + 1,
      propertyId: each.propertyId,
      name: each.propertyId,
      arriveSec: each.startSec,
      leaveSec: each.endSec,
      driveSec: 0,
      distanceM: 0,
      tasks: [],
      otherWays: [],
    })),
    loads: loads.map((each, index) => ({
      number: index + 1,
      kind: 'tank',
      fillPointId: '',
      fromBags: false,
      atPropertyId: '',
      beforeLb: 0,
      weightLb: 0,
      sumpGal: 0,
      products: [],
      covers: [],
      coversSqFt: 0,
      leftGal: 0,
      leftLb: 0,
      why: '',
      ...each,
    })),
    activities,
  };
}

export const morning = (startSec: number, endSec: number, volumeGal: number): PlanActivity => ({
  kind: 'morning',
  startSec,
  endSec,
  fills: [{ compartmentId: 'm/tank', materialId: 'mix', volumeGal, weightLb: 0, products: [] }],
  stock: [],
});

export const refill = (startSec: number, endSec: number, volumeGal: number): PlanActivity => ({
  kind: 'refill',
  startSec,
  endSec,
  ...at,
  fillPointId: '',
  afterSqFt: 0,
  rinsedCompartmentIds: [],
  rinseGal: 0,
  fills: [{ compartmentId: 'm/tank', materialId: 'mix', volumeGal, weightLb: 0, products: [] }],
  stock: [],
  reasonCode: 'runs-dry',
  reason: '',
});

export const drive = (startSec: number, endSec: number): PlanActivity => ({
  kind: 'drive',
  startSec,
  endSec,
  fromPlaceId: 'a',
  toPlaceId: 'b',
  distanceM: 0,
});

export const setUp = (startSec: number, endSec: number, propertyId = 'p'): PlanActivity => ({
  kind: 'set-up',
  startSec,
  endSec,
  propertyId,
});
